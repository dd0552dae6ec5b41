// Moves teeth on the picture: tells the page how far, in millimetres of the patient. While one answer is awaited the
// moves in between are dropped, and the last one is sent. An answer that is long in coming is given up for the newest
// place of the finger: the page drops it.

const threshold = 4; // pixels under which a touch is a tap
const patience = 250; // milliseconds after which a newer place overtakes the one that is being solved

export function watch(svg, page) {
  if (!svg) return; // the picture was taken off the page while this script was loading
  let drag = null;
  let busy = 0; // answers that are awaited
  let since = 0; // when the last of them was asked for
  let waiting = null;

  function place(event) {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return { x: point.x, y: point.y };
  }

  async function send(move) {
    move.begins ||= waiting?.begins ?? false;
    if (busy > 0 && performance.now() - since < patience) { waiting = move; return; }
    waiting = null;
    busy++;
    since = performance.now();
    try {
      await page.invokeMethodAsync('Drag', move.tooth, move.begins, move.x, move.y);
    } catch { /* the page has gone */ } finally { busy--; }
    if (waiting && busy === 0) await send(waiting);
  }

  function down(event) {
    const tooth = event.target.closest('[data-tooth]');
    if (!tooth || svg.dataset.mayMove !== 'yes' || event.button > 0) return;
    drag = { tooth: tooth.dataset.tooth, from: place(event), client: [event.clientX, event.clientY], moved: false };
  }

  function move(event) {
    if (!drag) return;
    const far = Math.hypot(event.clientX - drag.client[0], event.clientY - drag.client[1]);
    if (!drag.moved && far < threshold) return;
    const begins = !drag.moved;
    if (begins) svg.setPointerCapture?.(event.pointerId);
    drag.moved = true;
    event.preventDefault();
    const at = place(event);
    send({ tooth: drag.tooth, begins, x: at.x - drag.from.x, y: at.y - drag.from.y });
  }

  async function up() {
    if (!drag) return;
    const moved = drag.moved;
    drag = null;
    if (!moved) return;
    addEventListener('click', stop, { capture: true, once: true });
    setTimeout(() => removeEventListener('click', stop, { capture: true }), 50);
    while (busy > 0 || waiting) await new Promise(done => setTimeout(done, 10));
    try { await page.invokeMethodAsync('Drop'); } catch { /* the page has gone */ }
  }

  function stop(event) { event.stopPropagation(); event.preventDefault(); }

  svg.addEventListener('pointerdown', down);
  svg.addEventListener('pointermove', move);
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  svg.dataset.fingers = 'ready';
}
