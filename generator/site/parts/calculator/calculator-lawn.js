/* What is known of the chosen lawn stands in the fields that ask for it: its area, and what the inspection measured there. A link brings its
   own figures, and what a reader has typed stays. */
(function () {
  'use strict';

  Swardbook.calculatorLawn = function (form) {
    var wanted = form.fields.filter(function (each) { return each.root.hasAttribute('data-lawn'); }), filled = '';

    function textOf(lawn, part) { return part === 'area' ? lawn.area : lawn.facts[part]; }

    function fill() {
      var lawn = Swardbook.lawns.chosen();
      if (!lawn) return;
      wanted.forEach(function (each) {
        var text = textOf(lawn, each.root.getAttribute('data-lawn')), unit = each.root.getAttribute('data-metric-unit');
        var mine = each.root.querySelector('.sb-calculator__from');
        if (Swardbook.lawns.measured(text, unit) === null || each.touched && !(mine && mine.textContent === filled)) return;
        Swardbook.calculatorFill(each.root, text, unit, 'from lawn ' + lawn.code);
      });
      filled = 'from lawn ' + lawn.code;
    }

    if (!wanted.length || window.location.hash.indexOf('=') >= 0) return;
    Swardbook.lawns.follow(fill);
    fill();
  };
})();
