// The arch in space: teeth, slots, wire, forces and moments. It knows surfaces, places and colours, nothing of
// mechanics. Axes are those of the patient: x to the patient's right, y forward, z up [mm].

import {
  AmbientLight, ArrowHelper, BoxGeometry, BufferAttribute, BufferGeometry, CatmullRomCurve3, Color, ConeGeometry,
  DirectionalLight, Group, Matrix4, Mesh, MeshStandardMaterial, PerspectiveCamera, Plane, Raycaster, Scene, TorusGeometry,
  TubeGeometry, Vector2, Vector3, WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';

const mmOfNewton = 6;      // as on the flat pictures
const longestArrow = 16;
const leastForce = 0.03;   // N
const leastMoment = 1;     // N·mm
const threshold = 4;       // pixels under which a touch is a tap
const patience = 250;      // milliseconds after which a newer place overtakes the one that is being solved

const vector = (data, at) => new Vector3(data[at], data[at + 1], data[at + 2]);

export function open(host, page) {
  if (!host) return null; // taken off the page while this script was loading
  const renderer = new WebGLRenderer({ antialias: true, alpha: true });
  const scene = new Scene();
  const camera = new PerspectiveCamera(28, 1, 1, 800);
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, renderer.domElement);
  controls.enablePan = false;
  controls.minDistance = 40;
  controls.maxDistance = 300;
  const labels = document.createElement('div');
  labels.className = 'space-labels';
  host.replaceChildren(renderer.domElement, labels);
  renderer.domElement.setAttribute('aria-hidden', 'true'); // the buttons below name and choose the teeth

  const sky = new AmbientLight(0xffffff, 1.4);
  const lamp = new DirectionalLight(0xffffff, 2.2);
  scene.add(sky, camera);
  camera.add(lamp);
  lamp.position.set(-30, 60, 40);

  let teeth = [];
  let jaw = 1;
  let mayMove = false;
  let selected = null;
  let middle = new Vector3();
  let way = 'front';
  const wire = new Mesh(new BufferGeometry(), new MeshStandardMaterial({ metalness: 0.6, roughness: 0.35 }));
  const loads = new Group();
  scene.add(wire, loads);
  const paint = {};

  function colours() {
    const style = getComputedStyle(host);
    for (const name of ['wire', 'force', 'above', 'main'])
      paint[name] = new Color(style.getPropertyValue('--' + name).trim() || '#888888');
    wire.material.color.copy(paint.wire);
    for (const tooth of teeth) {
      tooth.crown.material.emissive.copy(tooth.iso === selected ? paint.main : new Color(0));
      tooth.crown.material.emissiveIntensity = 0.35;
    }
  }

  // Surfaces of the teeth, once an arch. points and triangles of all teeth lie one after the other.
  function setTeeth(list, pointBytes, triangleBytes, whichJaw) {
    const points = new Float32Array(pointBytes.slice().buffer);
    const triangles = new Uint32Array(triangleBytes.slice().buffer);
    for (const tooth of teeth) dispose(tooth.group);
    labels.replaceChildren();
    jaw = whichJaw;
    const surface = part => {
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(points.slice(part.point, part.point + part.points), 3));
      geometry.setIndex(new BufferAttribute(triangles.slice(part.triangle, part.triangle + part.triangles), 1));
      geometry.computeVertexNormals();
      return geometry;
    };
    teeth = list.map(tooth => {
      const crown = new Mesh(surface(tooth.crown), new MeshStandardMaterial({ color: 0xf3ecdc, roughness: 0.35 }));
      const root = new Mesh(
        surface(tooth.root), new MeshStandardMaterial({ color: 0xd3c096, roughness: 0.85 }));
      const group = new Group();
      group.add(crown, root);
      if (tooth.slot) group.add(makeBracket(tooth.slot));
      group.matrixAutoUpdate = false;
      crown.userData.iso = tooth.iso;
      scene.add(group);
      const label = document.createElement('span');
      labels.append(label);
      return { iso: tooth.iso, group, crown, label };
    });
    colours();
  }

  // Two wings with the slot between them, on a base; the channel is open outward (y of the slot's frame).
  function makeBracket(slot) {
    const material = new MeshStandardMaterial({ color: 0xb4bcc2, metalness: 0.5, roughness: 0.45 });
    const group = new Group();
    const wing = 0.9;
    for (const side of [-1, 1]) {
      const box = new Mesh(new BoxGeometry(slot.width, slot.depth + 0.5, wing), material);
      box.position.set(0, -0.25, side * (slot.height / 2 + wing / 2));
      group.add(box);
    }
    const base = new Mesh(new BoxGeometry(slot.width, 0.4, slot.height + 2 * wing), material);
    base.position.set(0, -slot.depth / 2 - 0.2, 0);
    group.add(base);
    return group;
  }

  // Where everything stands now: 20 numbers a tooth (frame, force, moment, above its ceiling, known), then the wire.
  function pose(poseBytes, wireBytes, radius, labelTexts, movable, chosen) {
    const data = new Float32Array(poseBytes.slice().buffer);
    const line = new Float32Array(wireBytes.slice().buffer);
    mayMove = movable;
    selected = chosen;
    dispose(loads, true);
    teeth.forEach((tooth, i) => {
      const at = 20 * i;
      const centre = vector(data, at);
      tooth.group.matrix = new Matrix4().makeBasis(vector(data, at + 3), vector(data, at + 6), vector(data, at + 9))
        .setPosition(centre);
      tooth.group.matrixWorldNeedsUpdate = true;
      tooth.centre = centre;
      tooth.outward = vector(data, at + 6);
      tooth.bite = vector(data, at + 9).multiplyScalar(jaw);
      tooth.label.textContent = labelTexts[i];
      tooth.label.className = `${data[at + 18] > 0 ? 'above' : ''} ${tooth.iso === chosen ? 'chosen' : ''}`.trim();
      if (data[at + 19] > 0) addLoads(centre, tooth.outward, vector(data, at + 12), vector(data, at + 15), data[at + 18] > 0);
    });
    wire.visible = line.length > 5;
    if (wire.visible) {
      wire.geometry.dispose();
      const points = [];
      for (let i = 0; i < line.length; i += 3) points.push(vector(line, i));
      wire.geometry = new TubeGeometry(new CatmullRomCurve3(points), Math.min(600, 3 * points.length), radius, 10);
    }
    colours();
    draw();
  }

  function addLoads(centre, outward, force, moment, above) {
    const colour = above ? paint.above : paint.force;
    const from = centre.clone().addScaledVector(outward, 1.2);
    const size = force.length();
    if (size > leastForce) {
      const length = Math.min(longestArrow, mmOfNewton * size);
      loads.add(new ArrowHelper(force.clone().normalize(), from, Math.max(length, 1.2), colour, 1.6, 1.1));
    }
    const turn = moment.length();
    if (turn > leastMoment) {
      const arc = new Group();
      const material = new MeshStandardMaterial({ color: colour, roughness: 0.7 });
      const ring = new Mesh(new TorusGeometry(2.4, 0.16, 8, 40, 1.5 * Math.PI), material);
      const head = new Mesh(new ConeGeometry(0.6, 1.4, 12), material);
      head.position.set(0, -2.4, 0);
      head.rotation.z = -Math.PI / 2; // at the end of three quarters, counter-clockwise: to +x
      arc.add(ring, head);
      arc.quaternion.setFromUnitVectors(new Vector3(0, 0, 1), moment.clone().normalize());
      arc.position.copy(from);
      loads.add(arc);
    }
  }

  function look(from) {
    const box = teeth.map(tooth => tooth.centre).filter(Boolean);
    if (box.length === 0) return;
    middle = new Vector3();
    for (const point of box) middle.add(point);
    middle.divideScalar(box.length);
    if (from !== 'bite') middle.z += 4 * jaw; // toward the roots, so that they are in the middle of the picture too
    const wide = host.clientWidth / Math.max(1, host.clientHeight);
    way = from;
    const far = ({ front: 100, bite: 150 }[from] ?? 124) * Math.max(1, 1.35 / wide);
    const up = new Vector3(0, 0, 1);
    const ways = {
      front: [0, 1, 0.05], right: [1, 0.35, 0.05], left: [-1, 0.35, 0.05], bite: [0, 0.001, -jaw],
    };
    const toward = new Vector3(...(ways[from] ?? ways.front)).normalize();
    camera.up.copy(up);
    camera.position.copy(middle).addScaledVector(toward, far);
    controls.target.copy(middle);
    controls.update();
    draw();
  }

  function draw() {
    if (!host.isConnected) return;
    renderer.render(scene, camera);
    const { clientWidth: width, clientHeight: height } = host;
    for (const tooth of teeth) {
      if (!tooth.centre) continue;
      const beside = way === 'bite' ? tooth.outward : tooth.bite; // where neither bracket nor crown is covered
      const at = tooth.centre.clone().addScaledVector(beside, way === 'bite' ? 4.5 : 7.5).project(camera);
      const facing = tooth.outward.dot(camera.position.clone().sub(tooth.centre).normalize()) > (way === 'bite' ? -1 : 0.3);
      tooth.label.hidden = !facing || at.z > 1;
      tooth.label.style.transform =
        `translate(-50%, -50%) translate(${((at.x + 1) * width / 2).toFixed(1)}px, ${((1 - at.y) * height / 2).toFixed(1)}px)`;
    }
    host.dataset.drawn = String(Number(host.dataset.drawn ?? 0) + 1);
  }

  function fit() {
    const { clientWidth: width, clientHeight: height } = host;
    if (width === 0 || height === 0) return;
    renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    renderer.setSize(width, height, false);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    draw();
  }

  // Fingers: a tap chooses a tooth, a drag on the chosen one moves it in the plane of the screen, any other turns the view.
  const ray = new Raycaster();
  let drag = null;
  let busy = 0;              // answers that are awaited
  let since = 0;             // when the last of them was asked for
  let waiting = null;

  function aim(event) {
    const box = renderer.domElement.getBoundingClientRect();
    ray.setFromCamera(new Vector2(
      2 * (event.clientX - box.left) / box.width - 1, 1 - 2 * (event.clientY - box.top) / box.height), camera);
  }

  function toothAt(event) {
    aim(event);
    const hit = ray.intersectObjects(teeth.map(tooth => tooth.crown))[0];
    return hit && teeth.find(tooth => tooth.crown === hit.object);
  }

  // As on the drawings: moves in between are dropped, and a newer place overtakes one that is long in solving.
  async function send(move) {
    move.begins ||= waiting?.begins ?? false;
    if (busy > 0 && performance.now() - since < patience) { waiting = move; return; }
    waiting = null;
    busy++;
    since = performance.now();
    try { await page.invokeMethodAsync('Drag', move.iso, move.begins, move.by.x, move.by.y, move.by.z); }
    catch { /* the page has gone */ } finally { busy--; }
    if (waiting && busy === 0) await send(waiting);
  }

  function down(event) {
    const tooth = event.button > 0 ? null : toothAt(event);
    drag = { tooth, client: [event.clientX, event.clientY], moved: false, turns: !(tooth && mayMove && tooth.iso === selected) };
    controls.enabled = drag.turns;
    if (!drag.turns) {
      drag.plane = new Plane().setFromNormalAndCoplanarPoint(camera.getWorldDirection(new Vector3()), tooth.centre);
      drag.from = ray.ray.intersectPlane(drag.plane, new Vector3());
    }
  }

  function move(event) {
    if (!drag) return;
    const far = Math.hypot(event.clientX - drag.client[0], event.clientY - drag.client[1]);
    if (!drag.moved && far < threshold) return;
    const begins = !drag.moved;
    drag.moved = true;
    if (drag.turns) return;
    aim(event);
    const at = ray.ray.intersectPlane(drag.plane, new Vector3());
    if (at) send({ iso: drag.tooth.iso, begins, by: at.sub(drag.from) });
  }

  async function up() {
    if (!drag) return;
    const { tooth, moved, turns } = drag;
    drag = null;
    if (moved && turns) way = ''; // turned by hand: numbers of teeth that face away are hidden
    controls.enabled = true;
    try {
      if (!moved && tooth) await page.invokeMethodAsync('Choose', tooth.iso);
      if (moved && !turns) {
        while (busy > 0 || waiting) await new Promise(done => setTimeout(done, 10));
        await page.invokeMethodAsync('Drop');
      }
    } catch { /* the page has gone */ }
  }

  function dispose(group, keep) {
    group.traverse(one => { one.geometry?.dispose(); one.material?.dispose?.(); });
    if (keep) group.clear(); else scene.remove(group);
  }

  const canvas = renderer.domElement;
  canvas.addEventListener('pointerdown', down, { capture: true }); // before the view's own, which it may switch off
  addEventListener('pointermove', move);
  addEventListener('pointerup', up);
  canvas.addEventListener('pointercancel', up);
  canvas.addEventListener('webglcontextlost', event => {
    event.preventDefault();
    page.invokeMethodAsync('Lost').catch(() => { /* the page has gone */ });
  });
  controls.addEventListener('change', draw);
  const sizes = new ResizeObserver(fit);
  sizes.observe(host);
  const themes = new MutationObserver(() => { colours(); draw(); });
  themes.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  const dim = () => { colours(); draw(); };
  scheme.addEventListener('change', dim);
  fit();

  return {
    setTeeth,
    pose,
    look,
    close() {
      sizes.disconnect();
      themes.disconnect();
      scheme.removeEventListener('change', dim);
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', up);
      controls.dispose();
      for (const tooth of teeth) dispose(tooth.group);
      dispose(loads);
      wire.geometry.dispose();
      renderer.dispose();
      renderer.forceContextLoss();
    },
  };
}
