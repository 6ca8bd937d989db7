/* Rain does the watering: a row a day that is watered, with the rain that the reader types, and what it spares. */
(function () {
  'use strict';
  var DAYS_AHEAD = 7, FIRST_SHOWN = 7, INCH_MM = 25.4;

  var us = Swardbook.readerUnits.us, add = Swardbook.add;

  /* A bare number is in the unit that the reader prefers; kept in mm. */
  function read(text) {
    var mm = Swardbook.quantity.read(text, us() ? 'in' : 'mm') * 1000;
    if (mm < 0 || mm > Swardbook.contract.kept.most_rain_mm) { throw new Swardbook.Problem('impossible', 'That is not one day\'s rain; give 0 or more, such as 8 mm.'); }
    return Number(mm.toPrecision(12));
  }

  function typed(mm) { return us() ? Number((mm / INCH_MM).toPrecision(4)) + ' in' : Number(mm.toPrecision(6)) + ' mm'; }

  /* From yesterday to a week ahead, and what has rain already; before any of that, the first days of the job. */
  function near(days, rain) {
    var today = Swardbook.dates.today();
    var found = days.filter(function (each) {
      var ahead = Swardbook.dates.fromIso(each.date) - today;
      return (ahead >= -1 && ahead <= DAYS_AHEAD) || rain[each.date] !== undefined;
    });
    return found.length > Object.keys(rain).length ? found : found.concat(days.filter(function (each) { return found.indexOf(each) < 0; }).slice(0, FIRST_SHOWN));
  }

  function row(list, date) {
    var made = add(list, 'li', 'sb-job__rain'), label = add(made, 'label');
    made.dataset.day = date;
    add(label, 'span', 'sb-job__rain-day');
    var input = add(label, 'input', 'sb-input');
    input.type = 'text';
    input.dataset.act = 'rain';
    input.maxLength = 20;
    add(made, 'span', 'sb-job__rain-so').setAttribute('role', 'status');
    return made;
  }

  function fill(made, each, rain) {
    var W = Swardbook.jobWords, input = made.querySelector('input'), so = made.querySelector('.sb-job__rain-so'), given = rain[each.date];
    Swardbook.words(made.querySelector('.sb-job__rain-day'), [W.day(each.date) + ': ', W.depth(each.depth_mm), ', ', W.litres(each.litres), '. Rain: ']);
    if (input !== document.activeElement || !input.hasAttribute('aria-invalid')) {
      if (input !== document.activeElement) { input.value = given === undefined ? '' : typed(given); }
      input.removeAttribute('aria-invalid');
      so.textContent = given === undefined ? '' : each.rain_mm !== null ? 'Rain is enough.' : 'That is less than is due, so water.';
    }
    made.classList.toggle('sb-job__rain--does-it', each.rain_mm !== null);
  }

  /* days: waterings in order of date. all: every one of them, not only those near. */
  function show(root, out, rain, all) {
    var W = Swardbook.jobWords, list = root.querySelector('[data-part=rain]'), days = Swardbook.jobLists.waterings(out), there = {};
    var wanted = all ? days : near(days, rain);
    wanted = days.filter(function (each, at) { return wanted.indexOf(each) >= 0 && (!at || days[at - 1].date !== each.date); });
    root.querySelector('[data-part=rain-box]').hidden = !days.length;
    root.querySelector('[data-act=rain-all]').hidden = wanted.length >= days.length;
    Swardbook.list(list.children).forEach(function (made) { there[made.dataset.day] = made; });
    wanted.forEach(function (each, number) {
      var made = there[each.date] || row(list, each.date);
      delete there[each.date];
      fill(made, each, rain);
      if (list.children[number] !== made) { list.insertBefore(made, list.children[number] || null); }
    });
    Object.keys(there).forEach(function (date) { there[date].remove(); });
    var spared = days.filter(function (each) { return each.rain_mm !== null; }).length;
    Swardbook.words(root.querySelector('[data-part=spared]'), spared
      ? ['Rain covers ' + W.count(spared, 'watering') + ': ', W.litres(out.water.spared_litres), ' less to give. ', W.litres(out.water.litres), ' are left to give.']
      : [W.litres(out.water.litres), ' to give in all.']);
  }

  /* What was typed for a day goes into the job; false where it cannot be read, which the row says. */
  function take(input, rain) {
    var made = input.closest('[data-day]'), text = input.value.trim();
    try {
      if (text) { rain[made.dataset.day] = read(text); } else { delete rain[made.dataset.day]; }
      Swardbook.markInvalid(input, false);
      return true;
    } catch (problem) {
      made.querySelector('.sb-job__rain-so').textContent = Swardbook.sentenceOf(problem);
      Swardbook.markInvalid(input, true);
      return false;
    }
  }

  Swardbook.jobRain = { show: show, take: take };
})();
