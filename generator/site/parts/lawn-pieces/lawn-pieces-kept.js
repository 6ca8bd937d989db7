/* The lawn as it is kept (assets/store/5-kept.js): its pieces, its area, and what follows it. */
(function () {
  'use strict';
  if (Swardbook.lawn) return;
  var told = [];

  function rows() { return Swardbook.kept('lawn'); }

  /* [{id, name, sizes, area in m2, hole}] in the order they were put on. */
  function pieces() {
    return rows().all().map(function (each) { return Object.assign({}, each.row, { id: each.id }); });
  }

  function tell() { told.forEach(function (each) { each(); }); }

  function together(hole) {
    return pieces().reduce(function (sum, each) { return each.hole === hole ? sum + each.area : sum; }, 0);
  }

  var unitOf = Swardbook.readerUnits.of;

  Swardbook.lawn = {
    pieces: pieces,
    rows: rows,
    /* [m2]; more than nothing only where it can feed a calculator. */
    area: function () { return Number((together(false) - together(true)).toPrecision(12)); },
    added: function () { return together(false); },
    takenAway: function () { return together(true); },
    fits: function (piece) { return Boolean(Swardbook.kept.sound('lawn', piece)); },
    longest: Swardbook.contract.kept.longest,
    /* Calls `act` now and whenever the lawn or the units change. */
    follow: function (act) { told.push(act); act(); },
    unit: function () { return unitOf('m2', 'ft2'); },
    otherUnit: function () { return unitOf('ft2', 'm2'); },
    show: function (m2, unit) { return Swardbook.calculator.pretty(Swardbook.calculator.show(m2, unit || Swardbook.lawn.unit(), 1)); },
    /* Six figures that count: what goes into a field or a link, without a tail from conversion. */
    typed: function (m2, unit) { return Swardbook.quantity.show(m2, unit, 6, false); },
    count: function () { var number = pieces().length; return number === 1 ? '1 piece' : number + ' pieces'; }
  };

  rows().follow(tell);
  document.addEventListener('swardbook:units', tell);
})();
