/* A job in words. Twin: job words. */
(function () {
  'use strict';
  var K = Swardbook.contract['job-planner'], MONTHS = Swardbook.contract.year.months;

  function said(name, values) { return Swardbook.filled(K.sentences[name], values || {}); }

  /* 'Mon 12 Oct 2026' for an ISO date. */
  function day(iso) {
    var number = Swardbook.dates.fromIso(iso);
    return K.weekdays[((number + 3) % 7 + 7) % 7] + ' ' + (+iso.slice(8)) + ' ' + MONTHS[+iso.slice(5, 7) - 1].slice(0, 3) + ' ' + iso.slice(0, 4);
  }

  function monthDay(text) { return text ? (+text.slice(3)) + ' ' + MONTHS[+text.slice(0, 2) - 1] : ''; }
  function count(number, one) { return number + ' ' + one + (number === 1 ? '' : 's'); }
  function people(number) { return number === 1 ? said('person') : said('persons', { people: number }); }
  function listed(numbers) { return numbers.length < 2 ? String(numbers[0]) : said('listed', { list: numbers.slice(0, -1).join(', '), last: numbers[numbers.length - 1] }); }
  function percent(share) { return Math.floor(share * 100 + 0.5) + ' %'; }
  function money(value) { return (Math.floor(value * 100 + 0.5) / 100).toFixed(2); }

  function spent(minutes) {
    if (minutes === null) { return ''; }
    var whole = Math.floor(minutes + 0.5);
    return whole <= K.longest_in_minutes ? whole + ' min' : Math.floor(whole / 60) + ' h ' + whole % 60 + ' min';
  }

  function clock(minutes) {
    var all = Math.floor(minutes + 0.5), whole = all % 1440, days = Math.floor(all / 1440);
    var told = String(Math.floor(whole / 60)).padStart(2, '0') + ':' + String(whole % 60).padStart(2, '0');
    return days ? said('day_clock', { day: days + 1, clock: told }) : told;
  }

  /* [metric, US] of a value in SI units. */
  function both(si, metric, us, decimals) {
    var C = Swardbook.calculator;
    var pair = [C.pretty(C.show(si, metric, decimals)), C.pretty(C.show(si, us, decimals))];
    return pair[0] === pair[1] ? [pair[0], ''] : pair;
  }

  function litres(value) { return both(value / 1000, 'L', 'US gal', 0); }
  function depth(mm) { return both(mm / 1000, 'mm', 'in', 1); }
  function area(m2) { return both(m2, 'm2', 'ft2', 1); }

  /* [metric, US] of an amount {value, unit}, as the calculator's result is usually given. */
  function amount(given, result) {
    var unit = Swardbook.quantity.unit(given.unit);
    return both(given.value * unit.factor + unit.offset, given.unit, result.us || result.unit, result.decimals);
  }

  function headline(window) {
    if (window.inside) { return said('inside'); }
    if (!window.from) { return said('no_window'); }
    return said(window.side === 'before' ? 'too_early' : 'too_late', { days: count(window.days_outside, 'day') });
  }

  function edges(window) {
    if (!window.from) { return ''; }
    if (window.from === '01-01' && window.to === '12-31') { return said('open_all_year'); }
    var best = window.best ? said('best', { day: monthDay(window.best) }) : '';
    return said('window', { first: monthDay(window.from), last: monthDay(window.to), best: best });
  }

  function settles(each, title) {
    return said('settles', { title: title, done: day(each.done_on), days: count(each.days, 'day'), first: day(each.first_day) });
  }

  function moved(step, titles, byHand) {
    if (!step.moved_days) { return ''; }
    var by = said(step.moved_days > 0 ? 'later' : 'earlier', { days: count(Math.abs(step.moved_days), 'day') });
    if (byHand) { return said('set_by_hand', { by: by }); }
    return step.moved_by ? said('moved_by', { by: by, title: titles[step.moved_by] }) : said('settles_in_time', { by: by });
  }

  function usual(step) {
    var mean = Swardbook.quantity.unit('°C');
    return [said('usual'), both(step.usual.mean_temperature_c * mean.factor + mean.offset, '°C', '°F', 1),
      said('usual_growth', { growth: step.usual.growth, frost: percent(step.usual.frost_probability) })];
  }

  function bought(line) { return line.name + (line.note ? '. ' + line.note : ''); }

  function included(cost) {
    var done = cost.included.map(function (each) { return each.times > 1 ? said('times', { name: each.name, times: each.times }) : each.name; });
    return done.length ? said('included', { list: done.join('; ') }) : '';
  }

  /* The words component's text; nothing where nothing is carried away. */
  function spoil(out) {
    if (!out.spoil_m3) { return []; }
    var counts = [];
    if (out.spoil_bags) { counts.push(count(out.spoil_bags, 'bag')); }
    if (out.spoil_trailer_loads) { counts.push(count(out.spoil_trailer_loads, 'trailer load')); }
    return [said('spoil'), both(out.spoil_m3, 'm3', 'yd3', 1), counts.length ? said('spoil_counts', { counts: counts.join(' or ') }) : '.'];
  }

  /* The words component's text: what machines are set to at a step; nothing where nothing is set. */
  function settings(step) {
    var parts = [];
    step.quantities.forEach(function (given) {
      if (ask(given)) { return; }
      var spec = Swardbook.calculators[given.calculator];
      given.settings.forEach(function (name) {
        var found = given.inputs[name] || given.results[name], of = spec.inputs.concat(spec.results).find(function (each) { return each.name === name; });
        if (!found) { return; }
        parts.push((parts.length ? ', ' : said('settings')) + (of.short || of.label || of.question) + ' ', amount(found, Object.assign({}, of, { decimals: K.setting_decimals })));
      });
    });
    return parts.length ? parts.concat('.') : [];
  }

  /* The titles of steps that are done only where needed, and are not needed so far. */
  function leftOpen(out) {
    var open = out.steps.filter(function (step) { return !step.counted; }).map(function (step) { return step.title; });
    return open.length ? said('left_open', { list: open.join('; ') }) : '';
  }

  /* What has to be typed in before a calculator at a step has an answer; nothing where it has one. */
  function ask(given) { return given.needs_label ? said('from_label') : given.measured ? said('measured') : ''; }

  function dates(step) { return day(step.date) + (step.until && step.until !== step.date ? ' to ' + day(step.until) : ''); }

  Swardbook.jobWords = {
    day: day, count: count, people: people, listed: listed, percent: percent, money: money, spent: spent, clock: clock, litres: litres, depth: depth, area: area,
    said: said, settings: settings, leftOpen: leftOpen, amount: amount, headline: headline, edges: edges, settles: settles, moved: moved, usual: usual, dates: dates, bought: bought, included: included, spoil: spoil, ask: ask, who: K.who
  };
})();
