// The arch in space on the patient's page, fetched only when it is asked for: to look at, not to move. A phone that cannot
// show it says so and keeps the drawing; one that is older still does not know modules, and is never offered it.

const numbersOfTooth = 20; // frame (12), force and moment (6, none here), above its ceiling, known

for (const button of document.querySelectorAll('button[data-space]')) {
  button.hidden = false;
  button.addEventListener('click', () => open(button));
}

async function open(button) {
  const box = button.closest('[data-weeks]');
  const host = box.querySelector('.space');
  const slider = box.querySelector('input[type=range]');
  const giveUp = () => {
    host.hidden = true;
    button.hidden = true;
    box.querySelector('.not').hidden = false;
  };
  button.disabled = true;
  try {
    const [space, answer] = await Promise.all([import('./gen/space.js'), fetch(button.dataset.space)]);
    if (!answer.ok) throw new Error('answered ' + answer.status);
    const arch = await answer.json();
    host.hidden = false;
    const view = space.open(host, {
      invokeMethodAsync: what => {
        if (what === 'Lost') giveUp();
        return Promise.resolve();
      },
    });
    view.setTeeth(arch.teeth, bytes(arch.points), bytes(arch.triangles), arch.jaw);
    const none = arch.teeth.map(() => '');
    const show = () => {
      const week = arch.weeks[Number(slider.value)];
      view.pose(pose(week.frames), floats(week.line), arch.radius, none, false, null);
      host.dataset.week = slider.value;
    };
    show();
    view.look('front');
    slider.addEventListener('input', show);
    button.hidden = true;
  } catch {
    giveUp();
  }
}

function pose(frames) {
  const teeth = frames.length / 12;
  const numbers = new Float32Array(teeth * numbersOfTooth);
  for (let i = 0; i < teeth; i++) numbers.set(frames.slice(12 * i, 12 * i + 12), numbersOfTooth * i);
  return new Uint8Array(numbers.buffer);
}

function floats(list) {
  return new Uint8Array(new Float32Array(list).buffer);
}

function bytes(base64) {
  return Uint8Array.from(atob(base64), sign => sign.charCodeAt(0));
}
