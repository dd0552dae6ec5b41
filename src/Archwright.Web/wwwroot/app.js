// What the pages need from the browser: the switch of light and dark, the end of an idle session, passkeys.

document.addEventListener('click', event => {
  if (!event.target.closest?.('[data-theme-switch]')) return;
  const dark = document.documentElement.dataset.theme
    ? document.documentElement.dataset.theme === 'dark'
    : matchMedia('(prefers-color-scheme: dark)').matches;
  document.documentElement.dataset.theme = dark ? 'light' : 'dark';
  localStorage.setItem('theme', document.documentElement.dataset.theme);
});

document.addEventListener('click', event => {
  if (event.target.closest?.('[data-print]')) print();
});

// An open screen that nobody touches signs itself out.
const minutes = Number(document.body.dataset.idleMinutes) || 60;
let last = Date.now();
for (const kind of ['pointerdown', 'keydown', 'touchstart']) addEventListener(kind, () => { last = Date.now(); }, { passive: true });
setInterval(() => {
  const form = document.querySelector('form[action="/account/sign-out"]');
  if (!form || Date.now() - last < minutes * 60000) return;
  const told = document.createElement('input');
  told.type = 'hidden';
  told.name = 'told';
  told.value = 'idle';
  form.append(told);
  form.submit();
}, 5000);

// The screen keeps the session of its cookie alive only while somebody works on it.
setInterval(() => {
  if (Date.now() - last < 120000 && document.querySelector('form[action="/account/sign-out"]')) fetch('/about', { credentials: 'same-origin' });
}, 120000);

function setUpPasskeys() {
  if (!window.PublicKeyCredential?.parseRequestOptionsFromJSON) return;
  for (const form of document.querySelectorAll('form[data-passkey][hidden]')) {
    form.hidden = false;
    form.addEventListener('submit', event => { event.preventDefault(); usePasskey(form); });
  }
}

async function post(path, form, more) {
  const data = new FormData(form);
  for (const [name, value] of Object.entries(more)) data.set(name, value);
  const answer = await fetch(path, { method: 'POST', body: data, credentials: 'same-origin' });
  if (!answer.ok) throw new Error(path + ' answered ' + answer.status);
  return answer;
}

async function usePasskey(form) {
  const adds = form.dataset.passkey === 'add';
  try {
    const options = await (await post(adds ? '/account/passkey/offer' : '/account/passkey/ask', form, {})).json();
    const credential = adds
      ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
      : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
    const answer = await post(adds ? '/account/passkey/add' : '/account/passkey/sign-in', form, { credential: JSON.stringify(credential) });
    location.assign(await answer.text());
  } catch (fault) {
    if (fault.name !== 'NotAllowedError') console.warn(fault.message);
    location.assign(adds ? '/account?told=wrong' : '/sign-in?told=passkey');
  }
}

setUpPasskeys();
