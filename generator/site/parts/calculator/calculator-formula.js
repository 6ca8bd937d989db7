/* Formulas on a telephone. No browser breaks MathML into lines, so each formula gets a twin of words, which do break: made when the working is
   first unfolded, and the style shows the one that fits the screen. */
(function () {
  'use strict';

  function laid(node) {
    var kind = node.localName, made = Swardbook.element('span', 'sb-formula__' + kind, node.children.length ? null : node.textContent);
    Swardbook.list(node.children).forEach(function (child, at) {
      if (kind === 'mfrac' && at) { Swardbook.add(made, 'span', 'sb-hidden', ' over '); }
      if (kind === 'msqrt' && !at) { Swardbook.add(made, 'span', '', '√'); }
      (kind === 'msup' && at ? Swardbook.add(made, 'sup') : made).appendChild(laid(child));
    });
    return made;
  }

  function start(working) {
    working.addEventListener('toggle', function () {
      Swardbook.each(working, 'math:only-child', function (formula) {
        var twin = Swardbook.element('div', 'sb-formula');
        twin.setAttribute('data-as-written', '');
        twin.appendChild(laid(formula.firstElementChild));
        formula.parentNode.appendChild(twin);
      });
    });
  }

  Swardbook.component('calculator-working', start);
})();
