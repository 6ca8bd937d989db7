/* 'Use the lawn: 240 m²' beside the area of a calculator, wherever one stands. */
(function () {
  'use strict';
  if (Swardbook.lawnBeside) return;
  Swardbook.lawnBeside = true;
  /* Six figures are put in, so that what is read back may differ in the seventh. */
  var SAME = 5e-6;

  Swardbook.component('lawn-pieces', function (root) {
    var calculator = root.closest('.sb-calculator');
    var spec = (Swardbook.calculators || {})[calculator.getAttribute('data-calculator')];
    var input = root.querySelector('.sb-calculator__input');
    if (!spec || input.tagName !== 'INPUT') return; /* Its script is not on this page: the fields stay shut. */
    var select = root.querySelector('.sb-calculator__unit');
    var box = Swardbook.element('p', 'sb-lawn-pieces__beside');
    var button = Swardbook.button('', use);
    var from = Swardbook.element('span', 'sb-lawn-pieces__from');
    var filling = false;

    function unit() { return select ? select.value : root.getAttribute('data-metric-unit'); }

    function forget() { if (!filling) from.textContent = ''; }

    function say() { from.textContent = 'from the lawn of ' + Swardbook.lawn.count(); }

    function holdsTheLawn() {
      try {
        return Math.abs(Swardbook.quantity.read(input.value, unit()) / Swardbook.lawn.area() - 1) < SAME;
      } catch (problem) {
        return !Swardbook.sentenceOf(problem);
      }
    }

    button.setAttribute('data-print-hidden', '');
    from.id = input.id + '-lawn';
    /* Not a role: the calculator finds its own status by that. */
    from.setAttribute('aria-live', 'polite');
    input.setAttribute('aria-describedby', (input.getAttribute('aria-describedby') || '') + ' ' + from.id);
    box.appendChild(button);
    box.appendChild(from);
    root.querySelector('.sb-calculator__entry').insertAdjacentElement('afterend', box);

    function use() {
      filling = true;
      input.value = Swardbook.lawn.typed(Swardbook.lawn.area(), unit());
      input.dispatchEvent(new Event('input', { bubbles: true }));
      filling = false;
      say();
    }
    root.addEventListener('input', forget);
    Swardbook.lawn.follow(function () {
      var area = Swardbook.lawn.area();
      box.hidden = !(area > 0);
      if (box.hidden) { from.textContent = ''; return; }
      button.textContent = 'Use the lawn: ' + Swardbook.lawn.show(area);
      if (from.textContent && !holdsTheLawn()) from.textContent = '';
    });
    /* Opened by the link below the lawn: the calculator has taken the figures of the link by now. */
    window.addEventListener('load', function () {
      var own = calculator.querySelector('[data-part=damaged]');
      if (own && own.hidden && /[#&]area=/.test(window.location.hash) && Swardbook.lawn.area() > 0 && holdsTheLawn()) say();
    });
  }, '.sb-calculator [data-input="area"]');
})();
