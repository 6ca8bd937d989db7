/* What goes onto paper, a page each: the job sheet, the shopping list with the gear, the sheet for the day. */
(function () {
  'use strict';

  function amounts(step, plan) {
    var planned = plan.kept.find(function (each) { return each.id === step.id; });
    return [].concat.apply([], step.quantities.map(function (given, number) {
      return Swardbook.jobWords.ask(given) ? [] : Swardbook.jobSteps.answers(given, planned.quantities[number]).slice(0, 1);
    }));
  }

  function cell(row, tag, text) { return Swardbook.add(row, tag, '', text); }

  /* What to take care with, by the numbers that stand in the rows. */
  function careKey(place, ids) {
    if (!ids.length) { return; }
    var line = place.appendChild(Swardbook.element('p', 'sb-job__sheet-care'));
    line.appendChild(Swardbook.element('strong', '', 'Care: '));
    line.appendChild(document.createTextNode(ids.map(function (id, number) { return (number + 1) + ' ' + Swardbook.jobs.book().cautions[id]; }).join('; ') + '.'));
  }

  /* A row a step: a box to tick, when, what and what it waits for, how much, how long, and the numbers of its cautions. */
  function sheet(place, out, plan, what, area, headline, stops) {
    var W = Swardbook.jobWords, S = Swardbook.jobSteps, cares = [];
    S.clear(place);
    place.appendChild(Swardbook.element('p', 'sb-job__sheet-title', 'Job sheet. ' + what));
    var line = place.appendChild(Swardbook.element('p', '', ''));
    Swardbook.words(line, [area, '. ' + headline + ' Lawn: ____________']);
    var table = place.appendChild(Swardbook.element('table', 'sb-job__sheet-table')), head = table.appendChild(Swardbook.element('thead')).appendChild(Swardbook.element('tr'));
    stops.forEach(function (stop) { place.insertBefore(Swardbook.element('p', 'sb-job__sheet-stop', 'Stop: ' + stop.say), table); });
    out.first.forEach(function (said) { Swardbook.words(place.insertBefore(Swardbook.element('p', 'sb-job__sheet-stop'), table), said); });
    ['', 'When', 'What', 'How much', 'Time', 'Care'].forEach(function (name) { cell(head, 'th', name).scope = 'col'; });
    var body = table.appendChild(Swardbook.element('tbody'));
    out.steps.forEach(function (step) {
      var row = body.appendChild(Swardbook.element('tr', step.stage === 'day' ? 'sb-job__sheet-day' : ''));
      cell(row, 'td', '☐');
      cell(row, 'td', W.day(step.date).slice(0, -5));
      var named = cell(row, 'th', step.title + (step.who === 'hands' ? '' : ' (' + step.who + ')'));
      named.scope = 'row';
      if (step.wait_for) { named.appendChild(Swardbook.element('span', 'sb-job__sheet-wait', 'Wait for: ' + step.wait_for)); }
      var much = cell(row, 'td', '');
      amounts(step, plan).forEach(function (answer, number) {
        much.appendChild(document.createTextNode((number ? '; ' : '') + answer.label + ' '));
        much.appendChild(S.quantity(answer.pair));
      });
      var set = W.settings(step);
      if (set.length) { Swardbook.words(much.appendChild(Swardbook.element('span', 'sb-job__sheet-wait')), set); }
      cell(row, 'td', step.counted ? W.spent(step.minutes) : W.said('if_needed'));
      step.cautions.forEach(function (id) { if (cares.indexOf(id) < 0) { cares.push(id); } });
      cell(row, 'td', step.cautions.map(function (id) { return cares.indexOf(id) + 1; }).join(', '));
    });
    careKey(place, cares);
  }

  /* Only one part goes to the printer; what is around it comes back after. */
  function print(name) {
    document.documentElement.setAttribute('data-print-job', name);
    window.print();
  }
  window.addEventListener('afterprint', function () { document.documentElement.removeAttribute('data-print-job'); });

  Swardbook.jobPrint = { sheet: sheet, print: print };
})();
