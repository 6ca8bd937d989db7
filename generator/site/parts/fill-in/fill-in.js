/* Fills a calculator's fields in from a grass, a place, a date, a product, a machine or an operation, and says beside each where its value comes
   from. The figures stand in one file, loaded at the first choice; a page opened from a folder may load a script, not fetch data. Twin: fill-in. */
(function () {
  'use strict';
  var A_MONTH = 30;
  var REMEMBERED = ['grass', 'place'];
  var YEAR = Swardbook.contract.year;
  var figures = null;
  var counts = null;

  /* Called by the file of figures. */
  Swardbook.fillIn = function (data) { figures = data; };
  Swardbook.fillInCounts = function (data) { counts = data; };

  /* '2026-10-12' as a day of the book's year, 0 for 1 January, and in words; null for no date. */
  function dayOf(iso) {
    if (Swardbook.dates.fromIso(iso) === null) return null;
    var number = Swardbook.dates.dayOfYear(iso);
    return { number: number, words: Swardbook.dates.dayWords(number) };
  }

  /* Degree days of a usual year counted up to one of two dates, and the days between them. */
  function ofSpan(name, chosen) {
    var words = figures.words;
    var day = name === 'degree_days_at_last' ? dayOf(chosen.until) : dayOf(chosen.date);
    if (name === 'days') return [(dayOf(chosen.until).number - day.number + YEAR.days) % YEAR.days, figures.units.days, words.span];
    var sum = 0;
    var count = counts.series[counts.of[chosen.grass][chosen.place]].map(function (added) { return (sum += added); });
    var values = { place: figures.places[chosen.place], base: counts.bases[chosen.grass], day: day ? day.words : '' };
    if (name === 'degree_days_of_year') return [Math.max.apply(null, count), figures.units[name], Swardbook.filled(words.year, values)];
    return [count[day.number], figures.units[name], Swardbook.filled(words.count, values)];
  }

  /* [value, unit, words] of a part, or null. */
  function value(part, chosen) {
    var wanted = figures.needs[part];
    if (!wanted.every(function (kind) { return chosen[kind]; })) return null;
    if (part.indexOf('span.') === 0) return ofSpan(part.slice(5), chosen);
    if (wanted.length === 1 && wanted[0] !== 'date') return figures.of[wanted[0]][chosen[wanted[0]]][part] || null;
    var day = dayOf(chosen.date);
    if (!day) return null;
    if (wanted.length === 1) return [day.number + 1, '1', Swardbook.filled(figures.words.date, { day: day.words })];
    var week = figures.weeks[part];
    var of = wanted[0] === 'grass' ? week.of[chosen.grass] : week.of;
    var words = Swardbook.filled(figures.words.week, { place: figures.places[chosen.place], day: day.words });
    return [week.series[of[chosen.place]][Math.min(Math.floor(day.number / 7), YEAR.weeks - 1)], week.unit, words];
  }

  Swardbook.component('fill-in', function (root) {
    var calculator = document.getElementById(root.getAttribute('data-for'));
    if (!calculator) return;
    var binds = JSON.parse(root.getAttribute('data-binds'));
    var choices = Swardbook.list(root.querySelectorAll('[data-choice]'));
    var told = root.querySelector('.sb-fill-in__told');
    var begun = false;

    function chosen() {
      var found = {};
      choices.forEach(function (each) { found[each.getAttribute('data-choice')] = each.value; });
      return found;
    }

    /* True for a figure that the field cannot take: a week that needs no water has no run time. */
    function isNothing(name, found) {
      var asked = Swardbook.calculators[calculator.getAttribute('data-calculator')].inputs.find(function (each) { return each.name === name; });
      return asked.above !== undefined && Swardbook.quantity.read(String(found[0]), found[1]) <= asked.above;
    }

    /* Fills in what waits for one of these kinds of choice. */
    function fill(kinds) {
      var now = chosen();
      var done = [], without = [], nothing = [];
      Object.keys(binds).forEach(function (name) {
        var field = calculator.querySelector('[data-input="' + name + '"]');
        var found = null, part = null;
        binds[name].some(function (each) { part = each; found = value(each, now); return found !== null; });
        var turned = binds[name].some(function (each) { return figures.needs[each].some(function (kind) { return kinds.indexOf(kind) >= 0; }); });
        var complete = figures.needs[part].every(function (kind) { return now[kind]; });
        if (!turned || !(found || complete)) return 0;
        var label = field.querySelector('label').firstChild.textContent.trim();
        if (found && isNothing(name, found)) return nothing.push(label);
        if (found) Swardbook.calculatorFill(field, found[0], found[1], found[2]);
        return (found ? done : without).push(label);
      });
      told.textContent = (done.length ? 'Filled in: ' + done.join('; ') + '.' : '') +
        (nothing.length ? ' None is needed in that week of a usual year, so what stands there is kept: ' + nothing.join('; ') + '.' : '') +
        (without.length ? ' The book has no figure for: ' + without.join('; ') + '.' : '');
    }

    function choose(changed) {
      /* The day that stands there from the start counts as chosen with the first choice. */
      var kinds = begun ? changed : changed.concat(['date', 'until']);
      begun = true;
      var failed = function () { told.textContent = 'The figures to fill in from are not in this copy of the book.'; };
      Promise.all(['data-file', 'data-counts-file'].map(function (name) { return root.getAttribute(name); }).filter(Boolean).map(Swardbook.load))
        .then(function () { if (figures && (counts || !root.getAttribute('data-counts-file'))) fill(kinds); else failed(); }, failed);
    }

    function restore() {
      var kept = choices.filter(function (each) {
        var kind = each.getAttribute('data-choice');
        var id = REMEMBERED.indexOf(kind) >= 0 ? Swardbook.preferences.get(kind) : null;
        return id && Swardbook.choose(each, id);
      }).map(function (each) { return each.getAttribute('data-choice'); });
      if (!kept.length) return;
      root.open = true;
      choose(kept);
    }

    var stretch = root.querySelector('[data-choice=until]') ? A_MONTH : 0;
    choices.forEach(function (each) {
      if (each.type !== 'date') return;
      each.value = Swardbook.dates.iso(Swardbook.dates.today() - (each.getAttribute('data-choice') === 'date' ? stretch : 0));
    });
    root.addEventListener('change', function (event) {
      var kind = event.target.getAttribute('data-choice');
      if (REMEMBERED.indexOf(kind) >= 0) Swardbook.preferences.set(kind, event.target.value);
      choose([kind]);
    });
    root.addEventListener('submit', function (event) { event.preventDefault(); });
    root.hidden = false;
    /* A link brings its own figures. */
    if (window.location.hash.indexOf('=') >= 0) return;
    restore();
    document.addEventListener('swardbook:lawn-chosen', restore);
  });
})();
