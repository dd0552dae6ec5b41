// One week at a time, with a slider and a button that runs through them. Without this script all weeks stand one below
// the other. Written for old phones.
(function () {
  var boxes = document.querySelectorAll('[data-weeks]');
  for (var i = 0; i < boxes.length; i++) {
    (function (box) {
      var label = box.querySelector('label');
      var slider = box.querySelector('input');
      var play = box.querySelector('[data-play]');
      var weeks = box.querySelectorAll('figure');
      var running = null;
      function show() {
        for (var w = 0; w < weeks.length; w++) weeks[w].hidden = String(w) !== slider.value;
      }
      function go(week) {
        slider.value = String(week);
        var moved = document.createEvent('Event');
        moved.initEvent('input', true, false);
        slider.dispatchEvent(moved);
      }
      function stop() {
        clearInterval(running);
        running = null;
      }
      label.hidden = false;
      play.hidden = false;
      slider.addEventListener('input', show);
      slider.addEventListener('pointerdown', stop);
      play.addEventListener('click', function () {
        if (running) { stop(); return; }
        go(0);
        running = setInterval(function () {
          if (Number(slider.value) + 1 < weeks.length) go(Number(slider.value) + 1);
          else stop();
        }, 800);
      });
      show();
    })(boxes[i]);
  }
})();
