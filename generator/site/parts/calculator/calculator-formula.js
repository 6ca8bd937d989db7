/* Formulas on a telephone. No browser breaks MathML into lines, so each formula gets a copy in words, which do break: made when the working is
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
        var copy = Swardbook.element('div', 'sb-formula');
        copy.setAttribute('data-as-written', '');
        copy.appendChild(laid(formula.firstElementChild));
        formula.parentNode.appendChild(copy);
      });
    });
  }

  Swardbook.component('calculator-working', start);
})();
