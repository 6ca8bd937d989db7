/* What follows from a job: shopping, gear, the sheet for the day, water and price. Twin: job on its page. */
(function () {
  'use strict';

  function said(name, values) { return Swardbook.filled(Swardbook.contract['job-planner'].sentences[name], values); }

  /* all: rows of cells. keys: what each row is of, where rows come and go between others. */
  function rows(root, name, all, keys) {
    var S = Swardbook.jobSteps, body = S.part(root, name), there = {};
    function keyOf(at) { return keys ? keys[at] : String(at); }
    Swardbook.list(body.children).forEach(function (row, at) {
      var key = row.sbKey || keyOf(at); /* What was printed has none. */
      if (all.some(function (cells, number) { return keyOf(number) === key; }) && !there[key]) { there[key] = row; } else { row.remove(); }
    });
    all.forEach(function (cells, at) {
      var row = there[keyOf(at)] || Swardbook.element('tr');
      row.sbKey = keyOf(at);
      if (body.children[at] !== row) { body.insertBefore(row, body.children[at] || null); }
      S.anew(row, cells, function () { fillRow(row, cells); });
    });
  }

  function fillRow(row, cells) {
    while (row.children.length > cells.length) { row.lastElementChild.remove(); }
    cells.forEach(function (cell, number) {
      var made = row.children[number] || Swardbook.add(row, number ? 'td' : 'th');
      if (!number && made.scope !== 'row') { made.scope = 'row'; }
      Swardbook.filledBy(made, function (made) { fillCell(made, cell); });
    });
  }

  function fillCell(made, cell) {
    if (cell.title) {
      made.textContent = cell.title;
      if (cell.detail.length) { Swardbook.words(Swardbook.add(made, 'span', 'sb-job__day-sheet-detail'), cell.detail); }
    } else if (typeof cell === 'string') { made.textContent = cell; } else { made.appendChild(Swardbook.jobSteps.quantity(cell)); }
  }

  /* The reason with all its numbers, where those say more; it is of what the fold around it says. */
  function exactly(box, text) {
    Swardbook.jobSteps.clear(box);
    if (text.length) { box.appendChild(Swardbook.exactly(text, Swardbook.small(box.closest('details').querySelector('summary').textContent))); }
  }

  /* The result that a line of the shopping list is bought by. */
  function boughtBy(line, plan) {
    var found = null;
    plan.kept.forEach(function (step) {
      step.quantities.forEach(function (each) {
        if ((!found || each.buy && each.buy.own && !found.buy.own) && each.buy && line.steps.indexOf(step.id) >= 0 && each.buy.name === line.name) { found = each; }
      });
    });
    return Swardbook.calculators[found.calculator].results.find(function (result) { return result.name === found.buy.result; });
  }

  function shopping(root, out, plan) {
    var W = Swardbook.jobWords;
    rows(root, 'shopping', out.shopping.map(function (line) {
      return [W.bought(line), W.amount(line.amount, boughtBy(line, plan)), line.packs === null ? '' : W.count(line.packs, 'pack'), line.cost === null ? '' : W.money(line.cost)];
    }));
  }

  /* Whether a booking is past its day: not where the step that books is done, or all that it is for. */
  function overdue(each, plan, job) {
    var booked = plan.kept.some(function (step) { return step.books && job.done[step.id]; }), used = each.steps.every(function (id) { return job.done[id]; });
    return Boolean(each.book_by) && each.book_by < Swardbook.dates.iso(Swardbook.dates.today()) && !booked && !used;
  }

  function by(name) {
    return function (one, other) { return one[name] < other[name] ? -1 : one[name] > other[name] ? 1 : 0; };
  }

  function gear(root, out, plan, job) {
    var W = Swardbook.jobWords, booked = out.gear.filter(function (each) { return each.book_by; }).sort(by('book_by'));
    var looked = out.gear.filter(function (each) { return each.check || !each.book_by; }).sort(by('check_by'));
    rows(root, 'gear', booked.map(function (each) {
      return [each.name, each.from, overdue(each, plan, job) ? said('overdue', { day: W.day(each.book_by) }) : W.day(each.book_by), W.day(each.needed)];
    }));
    Swardbook.list(root.querySelectorAll('[data-part=gear] > tr')).forEach(function (row, number) { row.classList.toggle('sb-job__overdue', overdue(booked[number], plan, job)); });
    Swardbook.hide(Swardbook.jobSteps.part(root, 'gear-box'), !booked.length);
    rows(root, 'looked-at', looked.map(function (each) { return [each.name, each.check ? W.day(each.check_by) : '', each.check || '', W.day(each.needed)]; }));
    Swardbook.hide(Swardbook.jobSteps.part(root, 'looked-at-box'), !looked.length);
    var spoil = Swardbook.jobSteps.part(root, 'spoil');
    Swardbook.jobSteps.words(spoil, out.spoil_m3 ? W.spoil(out) : []);
  }

  function workDays(out) {
    return out.steps.filter(function (step) { return step.who === 'hands'; }).map(function (step) { return step.date; })
      .filter(function (day, at, all) { return all.indexOf(day) === at; });
  }

  /* How much of everything, how often over it, and what the machine is set to; planned: the step as its plan has it. */
  function detail(step, planned) {
    var W = Swardbook.jobWords, parts = [], set = [];
    step.quantities.forEach(function (given, number) {
      set = set.concat(given.settings);
      if (W.ask(given)) { return; }
      Swardbook.jobSteps.answers(given, planned.quantities[number]).forEach(function (answer) { parts.push((parts.length ? '; ' : '') + answer.label + ' ', answer.pair); });
    });
    if (parts.length) { parts.push('. '); }
    if (step.passes > 1 && set.indexOf(planned.passes) < 0) { parts.push(said('over_times', { times: step.passes })); }
    return parts.concat(W.settings(step));
  }

  /* Until when one may still decide, and what wet weather holds; nothing where it holds none of the lines. */
  function wetWords(lines) {
    var W = Swardbook.jobWords, wet = Swardbook.jobs.book().wet, counted = lines.filter(function (line) { return line.step.counted; });
    function held(line) { return line.step.task && Swardbook.own(wet, line.step.task) ? wet[line.step.task] : []; }
    var waiting = counted.filter(function (line) { return held(line).length; }), last = waiting[waiting.length - 1];
    if (!waiting.length) { return ''; }
    var out = [said('wet', { time: W.clock(waiting[0].start), number: waiting[0].number })];
    ['leaf', 'soil', 'rain'].forEach(function (kind) {
      var numbers = waiting.filter(function (line) { return held(line).indexOf(kind) >= 0; }).map(function (line) { return line.number; });
      if (numbers.length) { out.push(said('wet_' + kind, { list: W.listed(numbers) })); }
    });
    if (counted[counted.length - 1] !== last) { out.push(said('wet_after', { number: last.number, time: W.clock(last.end) })); }
    return out.join(' ');
  }

  /* plan: its steps as jobPlan gives them. */
  function daySheet(root, out, plan, job, chosen) {
    var W = Swardbook.jobWords, S = Swardbook.jobSteps, days = workDays(out), select = Swardbook.jobSteps.part(root, 'day-sheet-days');
    var day = days.indexOf(chosen) >= 0 ? chosen : days.indexOf(out.on) >= 0 ? out.on : days[0];
    Swardbook.jobDesk.options(select, days.map(function (each) { return [each, W.day(each)]; }), day);
    var start = +job.start.slice(0, 2) * 60 + +job.start.slice(3), at = start, cautions = [];
    var lines = out.steps.filter(function (step) { return step.who === 'hands' && step.date === day; }).map(function (step, number) {
      var line = { number: number + 1, step: step, start: at, end: at + (step.counted ? step.minutes || 0 : 0) };
      at = line.end;
      step.cautions.forEach(function (id) { if (cautions.indexOf(id) < 0) { cautions.push(id); } });
      return line;
    });
    rows(root, 'day-sheet', lines.map(function (line) {
      var planned = plan.kept.find(function (each) { return each.id === line.step.id; });
      var times = { start: W.clock(line.start), end: W.clock(line.end) };
      return [
        line.end === line.start ? times.start : said('from_to', times), { title: line.number + '. ' + line.step.title, detail: detail(line.step, planned) },
        line.step.counted ? W.spent(line.step.minutes) || said('not_set') : said('if_needed')
      ];
    }), lines.map(function (line) { return line.step.id; }));
    var untimed = lines.filter(function (line) { return line.step.counted && line.step.minutes === null; }).map(function (line) { return line.step.title; });
    S.say(root, 'day-sheet-untimed', untimed.length ? said('untimed', { list: untimed.join('; ') }) : '');
    S.say(root, 'day-sheet-long', at - start > Swardbook.contract['job-planner'].longest_day ? said('long_day') : '');
    S.say(root, 'day-sheet-wet', wetWords(lines));
    Swardbook.say(Swardbook.jobSteps.part(root, 'day-sheet-crew-said'), said('crew', { people: W.people(out.people) }));
    S.list(Swardbook.jobSteps.part(root, 'day-sheet-cautions'), cautions, function (row, id) {
      row.appendChild(S.link(root.dataset.cautions + id + '.html', Swardbook.jobs.book().cautions[id]));
    });
    Swardbook.hide(Swardbook.jobSteps.part(root, 'day-sheet-care'), !cautions.length);
    Swardbook.say(Swardbook.jobSteps.part(root, 'day-sheet-day'), day ? W.day(day) : '');
    Swardbook.say(Swardbook.jobSteps.part(root, 'day-sheet-end'), W.clock(at));
    Swardbook.say(Swardbook.jobSteps.part(root, 'day-sheet-sum'), W.spent(at - start));
    Swardbook.hide(Swardbook.jobSteps.part(root, 'day-sheet-form'), false);
  }

  function waterings(out) {
    return [].concat.apply([], out.steps.map(function (step) { return step.watering; }))
      .sort(function (one, other) { return one.date < other.date ? -1 : one.date > other.date ? 1 : 0; });
  }

  function water(root, out) {
    var W = Swardbook.jobWords, on = Swardbook.dates.fromIso(out.on), weeks = {}, order = [];
    waterings(out).forEach(function (each) {
      var ahead = Swardbook.dates.fromIso(each.date) - on, week = ahead < 0 ? -1 : Math.floor(ahead / 7);
      if (!weeks[week]) { weeks[week] = { days: {}, litres: 0 }; order.push(week); }
      if (each.rain_mm !== null) { return; } /* Rain is enough. */
      weeks[week].days[each.date] = true;
      weeks[week].litres += each.litres;
    });
    rows(root, 'water', order.map(function (week) {
      var label = week < 0 ? said('before') : said('week', { number: week + 1, day: W.day(Swardbook.dates.iso(on + week * 7)) });
      return [label, W.count(Object.keys(weeks[week].days).length, 'day'), W.litres(weeks[week].litres)];
    }));
  }

  /* The day from which the client counts: when the last of the day's work is done that anything afterwards waits for. */
  function finished(out) {
    var waitedFor = {};
    out.steps.forEach(function (step) { if (step.stage === 'after') { step.after.forEach(function (id) { waitedFor[id] = true; }); } });
    return out.steps.filter(function (step) { return step.stage === 'day' && waitedFor[step.id]; })
      .reduce(function (day, step) { return step.date > day ? step.date : day; }, out.on);
  }

  /* What the client-link maker reads behind its #; steps that were ticked go with it as far as there is room. */
  function clientLink(out, job, sheet, measured) {
    var done = out.steps.filter(function (step) { return step.stage === 'day' && step.who === 'hands' && step.task && job.done[step.id]; })
      .map(function (step) { return step.id; }), made = null;
    var lawn = { on: finished(out), sheet: sheet, grass: job.grass, area: job.area };
    Object.keys(Swardbook.clientLink.measured).forEach(function (name) {
      var si = (measured || {})[Swardbook.clientLink.measured[name]];
      if (si) { lawn[name] = si / Swardbook.quantity.unit(Swardbook.clientLink.units[name]).factor; }
    });
    for (; made === null && done; done = done.length ? done.slice(0, -1) : null) {
      made = Swardbook.clientLink.write(Object.assign({ done: done.length ? done : null }, lawn));
    }
    return made || Swardbook.clientLink.write({ on: finished(out), sheet: sheet, grass: job.grass });
  }

  function lineName(line) { return line.kind === 'work' && line.times > 1 ? said('times', line) : line.name; }

  function price(root, out) {
    var W = Swardbook.jobWords, cost = out.cost;
    Swardbook.hide(Swardbook.jobSteps.part(root, 'price-box'), !cost);
    if (!cost) { return; }
    rows(root, 'price', cost.lines.map(function (line) {
      return [lineName(line), W.money(line.amount)];
    }));
    var sums = { 'before-tax': W.money(cost.before_tax), 'tax-name': Swardbook.jobs.book().tax, tax: W.money(cost.tax), total: W.money(cost.total), deposit: cost.deposit ? W.money(cost.deposit) : 'none' };
    Swardbook.jobSteps.say(root, 'included', W.included(cost));
    Swardbook.jobSteps.say(root, 'left-open', W.leftOpen(out));
    Object.keys(sums).forEach(function (name) { Swardbook.say(Swardbook.jobSteps.part(root, name), sums[name]); });
  }

  Swardbook.jobLists = { exactly: exactly, shopping: shopping, gear: gear, overdue: overdue, daySheet: daySheet, water: water, waterings: waterings, finished: finished, clientLink: clientLink, price: price, lineName: lineName, rows: rows, said: said };
})();
