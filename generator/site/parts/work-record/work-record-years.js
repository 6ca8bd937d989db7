/* What was fed, by lawn and year, with the calculator's own formula. Twin: nitrogen of a record. */
(function () {
  'use strict';
  var K = Swardbook.contract['work-record'], FED = ['product', 'area', 'nitrogen_percent'];

  /* {si} or {why} of one feed, by the calculator's formula. */
  function nitrogenOf(calculator, entry) {
    var typed = {};
    var wanting = Object.keys(K.not_written).filter(function (column) { return !entry[column]; })[0];
    if (wanting) return { why: K.not_written[wanting] };
    calculator.inputs.forEach(function (input) { typed[input.name] = { text: '0', unit: input.unit }; });
    typed.product.text = entry.amount;
    typed.area.text = entry.area;
    typed.nitrogen_percent.text = entry.nitrogen_percent;
    var run = Swardbook.calculator.run(calculator, typed);
    var wrong = calculator.inputs.map(function (input) {
      return FED.indexOf(input.name) >= 0 && (run.unread[input.name] || run.problems[input.name]);
    }).concat(run.noAnswer.nitrogen_rate).filter(Boolean)[0];
    return wrong ? { why: wrong } : { si: run.results.nitrogen_rate };
  }

  /* [{lawn, year, si, feeds, left: [{date, why}], grass}] by lawn and year. */
  function years(calculator, entries) {
    var found = new Map();
    entries.forEach(function (entry) {
      if (entry.work !== 'feed') return;
      var key = entry.lawn + ' ' + entry.date.slice(0, 4);
      var year = found.get(key) || { key: key, lawn: entry.lawn, year: entry.date.slice(0, 4), si: 0, feeds: 0, left: [], grass: '' };
      var nitrogen = nitrogenOf(calculator, entry);
      if (nitrogen.why) year.left.push({ date: entry.date, why: nitrogen.why });
      else { year.si += nitrogen.si; year.feeds += 1; }
      year.grass = entry.grass || year.grass;
      found.set(key, year);
    });
    return Array.from(found.values()).sort(function (a, b) { return a.key < b.key ? -1 : 1; });
  }

  function verdict(year, range) {
    return year.si < range[0] * (1 - K.slack) ? 'under' : year.si > range[1] * (1 + K.slack) ? 'over' : 'within';
  }

  Swardbook.recordYears = { years: years, verdict: verdict };
})();
