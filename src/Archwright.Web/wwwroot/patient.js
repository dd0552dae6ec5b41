// One week at a time, with a slider. Without this script all weeks stand one below the other.
(function () {
  var boxes = document.querySelectorAll('[data-weeks]');
  for (var i = 0; i < boxes.length; i++) {
    (function (box) {
      var label = box.querySelector('label');
      var slider = box.querySelector('input');
      var weeks = box.querySelectorAll('figure');
      function show() {
        for (var w = 0; w < weeks.length; w++) weeks[w].hidden = String(w) !== slider.value;
      }
      label.hidden = false;
      slider.addEventListener('input', show);
      show();
    })(boxes[i]);
  }
})();
