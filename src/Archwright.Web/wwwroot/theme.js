// Light or dark as last chosen here, otherwise as the device likes it; set before anything is drawn.
(() => {
  const kept = localStorage.getItem('theme');
  if (kept) document.documentElement.dataset.theme = kept;
})();
