/* What the client gets of a lawn's year: days, works and what they come to, as a sheet of the kind that a quote is
   (parts/job-money/money-papers.js), and the visits as a calendar file. Nothing of our own times and costs is in either. */
(function () {
  'use strict';

  function W() { return Swardbook.jobWords; }
  function name(task, tasks) { return Swardbook.own(tasks, task) ? tasks[task] : task; }
  function names(visit, tasks) { return (visit.tasks || []).map(function (task) { return name(task, tasks); }).join(', '); }
  function planName(plan) { return Swardbook.own(Swardbook.jobs.book().plans, plan) ? Swardbook.jobs.book().plans[plan].name : plan; }

  function moneyRows(quote, tax) {
    var money = Swardbook.moneyPapers.money, rows = [];
    if (!quote.inside) { rows.push(['Before tax', money(quote.before_tax)]); }
    return rows.concat([[tax + (quote.inside ? ', in these amounts' : ''), money(quote.tax)], ['To pay in the year, ' + quote.currency, money(quote.total)]]);
  }

  /* {title, blocks} for the sheet. tasks: names by id. */
  function letter(lawn, tasks, tax) {
    var P = Swardbook.moneyPapers, K = Swardbook.programmeKept, programme = lawn.programme, quote = programme.quote, lines = quote ? quote.lines || {} : {};
    var all = K.inOrder(programme).filter(function (each) { return !each.visit.skipped; });
    var rows = all.filter(function (each) { return each.id !== K.RENOVATION; }).map(function (each) {
      var cells = [W().day(each.on) + ': ' + names(each.visit, tasks) + (each.visit.done ? ', done' : '')];
      return quote ? cells.concat(lines[each.id] ? P.money(lines[each.id].amount) : '') : cells;
    });
    if (programme.cuts) { rows.push([K.cutsWords(programme.cuts)].concat(quote ? lines[K.MOWING] ? P.money(lines[K.MOWING].amount) : '' : [])); }
    var blocks = P.head({ name: lawn.code }).concat([
      { text: 'Visits to the lawn in the year from ' + W().day(programme.start) + '. The weather may move a day; the work stays the same.' },
      { rows: quote ? rows.concat(moneyRows(quote, tax)) : rows, strong: quote ? 1 : 0 }
    ]);
    all.filter(function (each) { return each.id === K.RENOVATION; }).forEach(function (each) {
      blocks.push({ text: planName(each.visit.plan) + ': about ' + W().day(each.on) + ', with an offer of its own.' });
    });
    if (quote && quote.until && !quote.accepted) { blocks.push({ rows: [['Can be accepted until', W().day(quote.until)]] }); }
    if (quote && quote.accepted) { blocks.push({ text: 'Accepted on ' + W().day(quote.accepted) + '.' }); }
    return { title: 'A year of visits to your lawn', blocks: blocks.concat(quote && !quote.accepted ? P.signed() : [], P.invented()) };
  }

  /* The text of an iCalendar file: an event a visit that is still to be done. says(task): what the calendar says of a task. */
  function calendar(lawn, tasks, says) {
    var K = Swardbook.programmeKept, key = ['programme', lawn.code, lawn.grass, lawn.place, lawn.site || 'open', lawn.programme.start.replace(/-/g, '')].join('-');
    var entries = K.inOrder(lawn.programme).filter(function (each) { return !each.visit.skipped && !each.visit.done; }).map(function (each) {
      var day = Swardbook.dates.fromIso(each.on), title = each.visit.plan ? planName(each.visit.plan) : names(each.visit, tasks);
      return {
        id: key + '-' + each.id, title: lawn.code + ': ' + Swardbook.told(title), first: day, last: day,
        text: (each.visit.tasks || []).map(function (task) { return Swardbook.told(name(task, tasks) + ': ' + says(task)); }).join('\n')
      };
    });
    return Swardbook.calendarFile(lawn.code + ': visits', entries, Swardbook.jobs.book().domain, new Date());
  }

  Swardbook.programmePaper = { letter: letter, calendar: calendar, names: names, planName: planName };
})();
