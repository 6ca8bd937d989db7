/* Puts a figure of the book, or of the chosen lawn, into a field and says beside it where it comes from; what a reader types there is no
   longer from anywhere. */
(function () {
  'use strict';
  var filling = false;

  function drop(field) {
    var note = field && field.querySelector('.sb-calculator__from');
    if (note) note.parentNode.removeChild(note);
  }

  /* field: a box with data-input. value, unit: of the figure. words: where it comes from. */
  Swardbook.calculatorFill = function (field, value, unit, words) {
    var input = field.querySelector('.sb-calculator__input');
    var select = field.querySelector('select');
    var shown = select ? select.value : field.getAttribute('data-metric-unit');
    var si = Swardbook.quantity.read(String(value), unit);
    var sameKind = Swardbook.quantity.unit(shown).dimension === Swardbook.quantity.unit(unit).dimension;
    if (!sameKind && select) select.value = shown = field.getAttribute('data-metric-unit');
    filling = true;
    input.value = Swardbook.calculator.figures(Swardbook.calculator.inUnit(si, shown), null);
    input.dispatchEvent(new Event('input', { bubbles: true }));
    filling = false;
    drop(field);
    var help = field.querySelector('.sb-calculator__help');
    help.insertBefore(document.createTextNode(' '), help.firstChild);
    help.insertBefore(Swardbook.element('span', 'sb-calculator__from', words), help.firstChild);
    var more = field.closest('details');
    if (more) more.open = true;
  };

  /* In any calculator of any page. */
  function typed(event) {
    if (!filling && event.target.closest) drop(event.target.closest('.sb-calculator__field'));
  }
  document.addEventListener('input', typed);
  document.addEventListener('swardbook:set', typed);
})();
