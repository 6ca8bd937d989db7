/* Redraws the year of a calendar page for another site or soil. The years were worked out when the book was built; they come in a
   small script, because a page opened from a folder may load scripts but may not fetch data. */
(function () {
  var loaded = {};

  /* Called by the script of each grass and place: by site, its strip, series, texts and rows, and those of each soil. */
  Swardbook.years = function (key, years) { loaded[key] = years; };

  function all(selector, root) { return Array.prototype.slice.call((root || document).querySelectorAll(selector)); }

  function line(parts) {
    var made = Swardbook.element('p');
    made.appendChild(Swardbook.element('strong', '', parts[0]));
    made.appendChild(document.createTextNode(' '));
    made.appendChild(Swardbook.words(Swardbook.element('span'), parts[1]));
    var both = document.createDocumentFragment();
    both.appendChild(made);
    if (parts.length > 2) both.appendChild(Swardbook.exactly(parts[2], parts[0]));
    return both;
  }

  function row(texts) {
    var made = Swardbook.element('tr');
    texts.forEach(function (text, column) {
      var cell = made.appendChild(Swardbook.words(Swardbook.element(column ? 'td' : 'th'), text));
      if (!column) cell.setAttribute('scope', 'row');
    });
    return made;
  }

  /* One part of the page anew: a text, lines, or rows. An empty text hides its box. */
  function fill(element, slot) {
    if ('text' in slot) {
      Swardbook.words(element, slot.text);
      (element.closest('[data-slot-box]') || element).hidden = !slot.text;
      return;
    }
    element.textContent = '';
    (slot.lines || slot.rows).forEach(function (each) { element.appendChild(slot.lines ? line(each) : row(each)); });
  }

  function fillAll(slots) {
    Object.keys(slots).forEach(function (id) {
      all('[data-slot="' + id + '"]').forEach(function (element) { fill(element, slots[id]); });
    });
  }

  function show(year, soil) {
    fillAll(year.slots);
    if (year.soils[soil]) fillAll(year.soils[soil]);
    fillAll({ soils: { rows: year.soil_rows } });
    all('[data-component~="year-chart"]').forEach(function (chart) { Swardbook.redrawChart(chart, year.series); });
    var strip = document.querySelector('[data-year-strip] .sb-season-strip');
    if (strip) Swardbook.redrawStrip(strip, year);
  }

  Swardbook.component('site-switch', function (root) {
    var choices = all('input', root);
    var soils = document.querySelector('[data-soil-choice]');
    var soil = soils && soils.querySelector('select');
    var say = root.querySelector('.sb-site-switch__say');
    var first = choices[0].value;

    function chosen() { return choices.filter(function (choice) { return choice.checked; })[0]; }

    function redraw() {
      var site = chosen();
      var name = site.parentElement.textContent.trim();
      Swardbook.load(root.getAttribute('data-years')).then(function () {
        /* A slow file must not overwrite the answer to a later choice. */
        if (chosen() !== site) return;
        show(loaded[root.getAttribute('data-key')][site.value], soil ? soil.value : '');
        say.textContent = site.value === first ? '' : 'Shown here: ' + name + '. The twelve months below are for open ground.';
      }).catch(function () { say.textContent = 'This copy of the book does not have the years of other sites.'; });
    }

    function restore() {
      var keptSite = Swardbook.preferences.get('site');
      var keptSoil = Swardbook.preferences.get('soil');
      choices.forEach(function (choice) { if (choice.value === keptSite) choice.checked = true; });
      if (soil && Array.prototype.some.call(soil.options, function (option) { return option.value === keptSoil; })) soil.value = keptSoil;
      return chosen().value !== first || Boolean(soil && soil.selectedIndex);
    }

    root.addEventListener('change', function () { Swardbook.preferences.set('site', chosen().value); redraw(); });
    root.addEventListener('submit', function (event) { event.preventDefault(); });
    if (soil) soil.addEventListener('change', function () { Swardbook.preferences.set('soil', soil.value); redraw(); });
    root.hidden = choices.length < 2;
    if (soils) soils.hidden = soil.options.length < 2;
    all('[data-without-script]').forEach(function (note) { note.hidden = Boolean(soils); });
    if (restore()) redraw();
    document.addEventListener('swardbook:lawn-chosen', function () {
      restore();
      redraw();
    });
  });
})();
