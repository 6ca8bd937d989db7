/* Fills a calculator's fields in from a grass, a place, a date, a product, a machine or an operation, and says beside each where its value comes
   from. The figures stand in one file, loaded at the first choice; a page opened from a folder may load a script, not fetch data. */
(function () {
  'use strict';
  var DAY = 86400000;
  var FEBRUARY = 2;
  var LAST_WEEK = 51;
  var YEAR = 365;
  var A_MONTH = 30;
  var REMEMBERED = ['grass', 'place'];
  var SPANS = { days: ['date', 'until'], degree_days_at_first: ['grass', 'place', 'date'], degree_days_at_last: ['grass', 'place', 'until'], degree_days_of_year: ['grass', 'place'] };
  var figures = null;
  var counts = null;
  var filling = false;

  /* Called by the file of figures. */
  Swardbook.fillIn = function (data) { figures = data; };
  Swardbook.fillInCounts = function (data) { counts = data; };

  function load(file, there, ready, failed) {
    if (!file || there()) return ready();
    var script = document.createElement('script');
    script.src = file;
    script.onload = function () { if (there()) ready(); else failed(); };
    script.onerror = failed;
    document.head.appendChild(script);
  }

  /* '2026-10-12' as a day of a year without 29 February, 0 for 1 January, and in words; null for no date. */
  function dayOf(iso) {
    var parts = /^\d{4}-(\d{2})-(\d{2})$/.exec(iso);
    if (!parts) return null;
    var month = Number(parts[1]), day = Number(parts[2]);
    if (month === FEBRUARY) day = Math.min(day, 28);
    return { number: (Date.UTC(2001, month - 1, day) - Date.UTC(2001, 0, 1)) / DAY, words: day + ' ' + figures.months[month - 1] };
  }

  function needs(part) {
    var kind = part.split('.')[0], thing = part.split('.')[1];
    if (kind === 'grass' || kind === 'group') return ['grass'];
    if (kind === 'practice') return [thing === 'machine' || thing === 'operation' ? thing : 'product'];
    if (kind === 'span') return SPANS[thing];
    if (part === 'week.day_of_year') return ['date'];
    if (kind !== 'week') return [kind];
    /* A series that is another for another grass is found by grass first. */
    var of = figures.weeks[part].of;
    return typeof of[Object.keys(of)[0]] === 'object' ? ['grass', 'place', 'date'] : ['place', 'date'];
  }

  /* Degree days of a usual year counted up to one of two dates, and the days between them. */
  function ofSpan(name, chosen) {
    var words = figures.words;
    var day = name === 'degree_days_at_last' ? dayOf(chosen.until) : dayOf(chosen.date);
    if (name === 'days') return [(dayOf(chosen.until).number - day.number + YEAR) % YEAR, 'day', words.span];
    var sum = 0;
    var count = counts.series[counts.of[chosen.grass][chosen.place]].map(function (added) { return (sum += added); });
    var said = (name === 'degree_days_of_year' ? words.year : words.count).replace('{place}', figures.places[chosen.place]).replace('{base}', counts.bases[chosen.grass]);
    if (name === 'degree_days_of_year') return [Math.max.apply(null, count), '°C day', said];
    return [count[day.number], '°C day', said.replace('{day}', day.words)];
  }

  /* [value, unit, words] of a part, or null. */
  function value(part, chosen) {
    var wanted = needs(part);
    if (!wanted.every(function (kind) { return chosen[kind]; })) return null;
    if (part.indexOf('span.') === 0) return ofSpan(part.slice(5), chosen);
    if (wanted.length === 1 && wanted[0] !== 'date') return figures.of[wanted[0]][chosen[wanted[0]]][part] || null;
    var day = dayOf(chosen.date);
    if (!day) return null;
    if (wanted.length === 1) return [day.number + 1, '1', figures.words.date.replace('{day}', day.words)];
    var week = figures.weeks[part];
    var of = wanted[0] === 'grass' ? week.of[chosen.grass] : week.of;
    var words = figures.words.week.replace('{place}', figures.places[chosen.place]).replace('{day}', day.words);
    return [week.series[of[chosen.place]][Math.min(Math.floor(day.number / 7), LAST_WEEK)], week.unit, words];
  }

  function noteOf(field) { return field.querySelector('.sb-calculator__from'); }

  function drop(field) {
    var note = field && noteOf(field);
    if (note) note.parentNode.removeChild(note);
  }

  function write(field, found) {
    var input = field.querySelector('.sb-calculator__input');
    var select = field.querySelector('select');
    var shown = select ? select.value : field.getAttribute('data-metric-unit');
    var si = Swardbook.quantity.read(String(found[0]), found[1]);
    var sameKind = Swardbook.quantity.unit(shown).dimension === Swardbook.quantity.unit(found[1]).dimension;
    if (!sameKind && select) select.value = shown = field.getAttribute('data-metric-unit');
    filling = true;
    input.value = Swardbook.calculator.figures(Swardbook.calculator.inUnit(si, shown), null);
    input.dispatchEvent(new Event('input', { bubbles: true }));
    filling = false;
    drop(field);
    var help = field.querySelector('.sb-calculator__help');
    help.insertBefore(document.createTextNode(' '), help.firstChild);
    help.insertBefore(Swardbook.element('span', 'sb-calculator__from', found[2]), help.firstChild);
    var more = field.closest('details');
    if (more) more.open = true;
  }

  /* What a reader types is no longer from anywhere: in any calculator of any page. */
  function typed(event) {
    if (!filling && event.target.closest) drop(event.target.closest('.sb-calculator__field'));
  }
  document.addEventListener('input', typed);
  document.addEventListener('swardbook:set', typed);

  Swardbook.component('fill-in', function (root) {
    var calculator = document.getElementById(root.getAttribute('data-for'));
    if (!calculator) return;
    var binds = JSON.parse(root.getAttribute('data-binds'));
    var choices = Array.prototype.slice.call(root.querySelectorAll('[data-choice]'));
    var told = root.querySelector('.sb-fill-in__told');
    var begun = false;

    function chosen() {
      var found = {};
      choices.forEach(function (each) { found[each.getAttribute('data-choice')] = each.value; });
      return found;
    }

    /* Fills in what waits for one of these kinds of choice. */
    function fill(kinds) {
      var now = chosen();
      var done = [], without = [];
      Object.keys(binds).forEach(function (name) {
        var field = calculator.querySelector('[data-input="' + name + '"]');
        var found = null, part = null;
        binds[name].some(function (each) { part = each; found = value(each, now); return found !== null; });
        var turned = binds[name].some(function (each) { return needs(each).some(function (kind) { return kinds.indexOf(kind) >= 0; }); });
        var complete = needs(part).every(function (kind) { return now[kind]; });
        if (!turned || !(found || complete)) return;
        var label = field.querySelector('label').firstChild.textContent.trim();
        if (found) write(field, found);
        (found ? done : without).push(label);
      });
      told.textContent = (done.length ? 'Filled in: ' + done.join('; ') + '.' : '') +
        (without.length ? ' The book has no figure for: ' + without.join('; ') + '.' : '');
    }

    function choose(changed) {
      /* The day that stands there from the start counts as chosen with the first choice. */
      var kinds = begun ? changed : changed.concat(['date', 'until']);
      begun = true;
      var failed = function () { told.textContent = 'The figures to fill in from are not in this copy of the book.'; };
      load(root.getAttribute('data-file'), function () { return figures; }, function () {
        load(root.getAttribute('data-counts-file'), function () { return counts; }, function () { fill(kinds); }, failed);
      }, failed);
    }

    function restore() {
      var kept = choices.filter(function (each) {
        var kind = each.getAttribute('data-choice');
        var id = REMEMBERED.indexOf(kind) >= 0 ? Swardbook.preferences.get(kind) : null;
        var known = id && Array.prototype.some.call(each.options, function (option) { return option.value === id; });
        if (known) each.value = id;
        return known;
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
    if (window.location.hash.indexOf('=') < 0) restore();
  });
})();
