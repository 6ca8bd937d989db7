/* Which of two units this reader uses, and a unit beside a bare number. */
(function () {
  'use strict';

  /* As the page shows them just now. */
  function us() { return document.documentElement.getAttribute('data-units') === 'us'; }

  /* A field that starts with a figure, before any part of the page takes it. */
  Swardbook.component('us-value', function (input) {
    if (us() && input.value === input.defaultValue) input.value = input.getAttribute('data-us-value');
  }, '[data-us-value]');

  Swardbook.readerUnits = {
    us: us,
    system: function () { return us() ? 'us' : 'metric'; },
    /* The metric unit, or the one of a US reader where that is another. */
    of: function (metric, other) { return us() ? other || metric : metric; },
    /* '12' -> '12 mm', so that switching units cannot change what was said; a text with more than a number in it stays as it is. */
    beside: function (text, unit) {
      var bare = text.trim();
      return bare && unit && unit !== '1' && Swardbook.quantity.isBare(bare) ? bare + ' ' + unit : bare;
    }
  };
})();
