/* A job in words. The twin of generator/site/pages/job/job_words.py: a test holds that the page says the same before and after its script. */
(function () {
  'use strict';
  var WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
  var MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
  var LONGEST_IN_MINUTES = 90;
  var ASK = { label: 'type in the rate from the label.', measured: 'measure it on the day and type it in.' };
  var WHO = { hands: '', client: 'The client does this.', office: 'Done from the office.' };

  /* 'Mon 12 Oct 2026' for an ISO date. */
  function day(iso) {
    var number = Swardbook.dates.fromIso(iso);
    return WEEKDAYS[((number + 4) % 7 + 7) % 7] + ' ' + (+iso.slice(8)) + ' ' + MONTHS[+iso.slice(5, 7) - 1].slice(0, 3) + ' ' + iso.slice(0, 4);
  }

  function monthDay(text) { return text ? (+text.slice(3)) + ' ' + MONTHS[+text.slice(0, 2) - 1] : ''; }
  function count(number, one) { return number + ' ' + one + (number === 1 ? '' : 's'); }
  function percent(share) { return Math.floor(share * 100 + 0.5) + ' %'; }
  function money(value) { return (Math.floor(value * 100 + 0.5) / 100).toFixed(2); }

  function spent(minutes) {
    if (minutes === null) { return ''; }
    var whole = Math.floor(minutes + 0.5);
    return whole <= LONGEST_IN_MINUTES ? whole + ' min' : Math.floor(whole / 60) + ' h ' + whole % 60 + ' min';
  }

  function clock(minutes) {
    var whole = Math.floor(minutes + 0.5) % 1440;
    return String(Math.floor(whole / 60)).padStart(2, '0') + ':' + String(whole % 60).padStart(2, '0');
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
    if (window.inside) { return 'Inside the window.'; }
    if (!window.from) { return 'No window here.'; }
    return 'Outside the window: ' + count(window.days_outside, 'day') + ' too ' + (window.side === 'before' ? 'early' : 'late') + '.';
  }

  function edges(window) {
    if (!window.from) { return ''; }
    if (window.from === '01-01' && window.to === '12-31') { return 'The window is open all year.'; }
    return 'The window: ' + monthDay(window.from) + ' to ' + monthDay(window.to) + (window.best ? ', best about ' + monthDay(window.best) : '') + '.';
  }

  function settles(each, title) {
    return title + ': done on ' + day(each.done_on) + ', it needs ' + count(each.days, 'day') + ' here. That makes the first possible day of the job ' + day(each.first_day) + '.';
  }

  function moved(step, titles, byHand) {
    if (!step.moved_days) { return ''; }
    var by = count(Math.abs(step.moved_days), 'day') + (step.moved_days > 0 ? ' later' : ' earlier') + ' than planned';
    if (byHand) { return by + ': set by you.'; }
    return by + (step.moved_by ? ', because of “' + titles[step.moved_by] + '”.' : ', so that it settles in time.');
  }

  function usual(step) {
    var mean = Swardbook.quantity.unit('°C');
    return ['Usual here at that time: daily mean ', both(step.usual.mean_temperature_c * mean.factor + mean.offset, '°C', '°F', 1),
      ', growth ' + step.usual.growth + ', frost on ' + percent(step.usual.frost_probability) + ' of nights.'];
  }

  function bought(line) { return line.name + (line.note ? '. ' + line.note : ''); }

  function included(cost) {
    var done = cost.included.map(function (each) { return each.name + (each.times > 1 ? ', ' + each.times + ' times' : ''); });
    return done.length ? 'Included in the price: ' + done.join('; ') + '.' : '';
  }

  /* The words component's text; nothing where nothing is carried away. */
  function spoil(out) {
    if (!out.spoil_m3) { return []; }
    var counts = [];
    if (out.spoil_bags) { counts.push(count(out.spoil_bags, 'bag')); }
    if (out.spoil_trailer_loads) { counts.push(count(out.spoil_trailer_loads, 'trailer load')); }
    return ['To carry away, loose: ', both(out.spoil_m3, 'm3', 'yd3', 1), counts.length ? ', which is ' + counts.join(' or ') + '.' : '.'];
  }

  /* What has to be typed in before a calculator at a step has an answer; nothing where it has one. */
  function ask(given) { return given.needs_label ? ASK.label : given.measured ? ASK.measured : ''; }

  function dates(step) { return day(step.date) + (step.until && step.until !== step.date ? ' to ' + day(step.until) : ''); }

  Swardbook.jobWords = {
    day: day, count: count, percent: percent, money: money, spent: spent, clock: clock, litres: litres, depth: depth, area: area,
    amount: amount, headline: headline, edges: edges, settles: settles, moved: moved, usual: usual, dates: dates, bought: bought, included: included, spoil: spoil, ask: ask, who: WHO
  };
})();
