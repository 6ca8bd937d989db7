/* Draws strips for years that arrive as data, as season-strip.html.j2 does: patterns, heights and words come from the contract
   (generator/site/shared/strip_drawing.py). Twin: season strip.
   drawStrip(id, year): a card strip (the picker's). year: description, and weeks: 52 texts, each the first letter of its growth
   (dormant, slow, growing, peak) and then a letter for each thing that is so: f frost, c a chance of it, w wet, r renovation, o overseeding.
   redrawStrip(figure, year): a strip of the page again, for another site. year: description; growth: 52 such first letters; frost,
   chance, wet, renovation, overseeding: 52 of 1 and 0; bands: what the key calls each kind of window there is. */
(function () {
  var strip = Swardbook.contract.strip, year = Swardbook.contract.year;

  /* A growth by its first letter. */
  function growthNamed(letter) { return Object.keys(strip.heights).filter(function (name) { return name.charAt(0) === letter; })[0]; }

  function svg(tag, className, attributes) {
    var made = document.createElementNS('http://www.w3.org/2000/svg', tag);
    if (className) made.setAttribute('class', 'sb-season-strip__' + className);
    Object.keys(attributes || {}).forEach(function (name) { made.setAttribute(name, attributes[name]); });
    return made;
  }

  function row(className) {
    return svg('svg', className, { 'aria-hidden': 'true' });
  }

  function share(weeks) {
    return (100 * weeks) / year.weeks + '%';
  }

  /* Neighbouring equal characters as {value, first, count}. */
  function runs(text) {
    var pieces = [];
    for (var index = 0; index < text.length; index += 1) {
      var last = pieces[pieces.length - 1];
      if (last && last.value === text.charAt(index)) last.count += 1;
      else pieces.push({ value: text.charAt(index), first: index, count: 1 });
    }
    return pieces;
  }

  function growthOf(weeks) {
    return weeks.map(function (week) { return week.charAt(0); }).join('');
  }

  /* 52 characters: the flag's first letter where it is so, '.' where not. */
  function flagOf(weeks, name) {
    var letter = name.charAt(0);
    return weeks.map(function (week) { return week.indexOf(letter, 1) > 0 ? letter : '.'; }).join('');
  }

  function flags(id, name, text, className, height) {
    var drawn = row(className);
    runs(text).forEach(function (piece) {
      if (piece.value === '.') return;
      var bar = name === 'renovation' || name === 'overseeding' ? 'bar' : '';
      /* A box of its own, so that the pattern begins where the stretch begins. */
      var box = drawn.appendChild(svg('svg', '', { x: share(piece.first), width: share(piece.count), height: '100%' }));
      box.appendChild(svg('rect', bar, { width: '100%', height: height, fill: 'url(#' + id + '-' + name + ')' }));
    });
    return drawn;
  }

  /* Frost that is likely and frost that is possible share a row. */
  function frosts(id, likely, possible) {
    var drawn = flags(id, 'frost', likely, 'frost', 10), more = flags(id, 'chance', possible, 'frost', 10);
    while (more.firstChild) drawn.appendChild(more.firstChild);
    return drawn;
  }

  function definitions(id) {
    var all = svg('defs');
    Object.keys(strip.patterns).forEach(function (name) {
      var pattern = all.appendChild(svg('pattern', '', { id: id + '-' + name, width: strip.patterns[name][0], height: strip.patterns[name][1], patternUnits: 'userSpaceOnUse' }));
      strip.patterns[name][2].forEach(function (part) { pattern.appendChild(svg(part[0], part[1], part[2])); });
    });
    return all;
  }

  function growth(id, text) {
    var drawn = row('growth');
    runs(text).forEach(function (piece) {
      var name = growthNamed(piece.value), height = strip.heights[name];
      var place = { x: share(piece.first), y: 100 - height + '%', width: share(piece.count), height: height + '%' };
      if (strip.patterns[name]) place.fill = 'url(#' + id + '-' + name + ')';
      drawn.appendChild(svg('rect', !strip.patterns[name] ? 'week sb-season-strip__week--peak' : 'week', place));
    });
    return drawn;
  }

  function months() {
    var drawn = row('months');
    year.starts.forEach(function (first, month) {
      var start = 100 * first / year.days + '%', middle = 100 * (first + 14) / year.days + '%';
      drawn.appendChild(svg('line', 'month-line', { x1: start, x2: start, y1: 0, y2: '100%' }));
      drawn.appendChild(svg('text', 'letter', { x: middle, y: '76%' })).textContent = year.months[month].charAt(0);
    });
    return drawn;
  }

  function bars(band, id, kind, weeks) {
    if (/[^.]/.test(weeks)) band.appendChild(flags(id, kind, weeks, 'window sb-season-strip__window--' + kind, '85%'));
  }

  /* What the signs that are drawn mean, below them. */
  function sign(id, name) {
    var drawn = row('swatch'), grows = name in strip.heights, fill = { fill: 'url(#' + id + '-' + name + ')' };
    var size = grows ? { x: 0.5, y: 0.5, width: 23, height: 13 } : name in strip.words.work ? { x: 0.5, y: 1.5, width: 23, height: 11 } : { width: 18, height: strip.patterns[name][1] };
    var place = grows || name in strip.words.work ? drawn : drawn.appendChild(svg('g', '', { transform: 'translate(3 2)' }));
    var kind = grows ? 'week' + (strip.patterns[name] ? '' : ' sb-season-strip__week--' + name) : name in strip.words.work ? 'bar' : '';
    place.appendChild(svg('rect', kind, Object.assign(size, strip.patterns[name] ? fill : {})));
    return drawn;
  }

  function keyOf(id, year) {
    var key = Swardbook.element('ul', 'sb-season-strip__legend'), grown = growthOf(year.weeks);
    function tell(name, words, is) {
      if (!is) return;
      var item = key.appendChild(Swardbook.element('li'));
      item.appendChild(sign(id, name));
      item.appendChild(document.createTextNode(words));
    }
    Object.keys(strip.words.growth).forEach(function (name) { tell(name, strip.words.growth[name], grown.indexOf(name.charAt(0)) >= 0); });
    Object.keys(strip.words.signs).forEach(function (name) { tell(name, strip.words.signs[name], /[^.]/.test(flagOf(year.weeks, name))); });
    return key;
  }

  Swardbook.drawStrip = function (id, year) {
    var figure = Swardbook.element('figure', 'sb-season-strip sb-season-strip--card');
    var band = figure.appendChild(Swardbook.element('div', 'sb-season-strip__year'));
    figure.setAttribute('data-first', '1 Jan');
    band.setAttribute('role', 'img');
    band.setAttribute('aria-label', year.description);
    var frost = band.appendChild(frosts(id, flagOf(year.weeks, 'frost'), flagOf(year.weeks, 'chance')));
    frost.insertBefore(definitions(id), frost.firstChild);
    band.appendChild(growth(id, growthOf(year.weeks)));
    band.appendChild(flags(id, 'wet', flagOf(year.weeks, 'wet'), 'wet', 6));
    band.appendChild(months());
    ['renovation', 'overseeding'].forEach(function (kind) { bars(band, id, kind, flagOf(year.weeks, kind)); });
    figure.appendChild(keyOf(id, year));
    Swardbook.markToday(figure);
    return figure;
  };

  /* Puts a new row where the old one is; what the old one defines or rules off stays. */
  function replace(band, part, drawn, kept) {
    var old = band.querySelector('.sb-season-strip__' + part);
    Swardbook.list(old.querySelectorAll(kept)).reverse().forEach(function (each) { drawn.insertBefore(each, drawn.firstChild); });
    band.replaceChild(drawn, old);
  }

  function key(figure, year) {
    Swardbook.each(figure, '[data-key]', function (item) {
      var name = item.getAttribute('data-key');
      item.hidden = name in strip.heights ? year.growth.indexOf(name.charAt(0)) < 0 : year[name].indexOf('1') < 0;
      if (year.bands[name]) item.querySelector('.sb-season-strip__label').textContent = year.bands[name];
    });
  }

  function inWords(figure, year) {
    var body = figure.querySelector('.sb-season-strip__table tbody');
    if (!body) return;
    body.textContent = '';
    Swardbook.spells(year).forEach(function (spell) {
      var row = body.appendChild(Swardbook.element('tr'));
      spell.forEach(function (text, column) {
        var cell = row.appendChild(Swardbook.element(column ? 'td' : 'th', '', text));
        if (!column) cell.setAttribute('scope', 'row');
      });
    });
  }

  Swardbook.redrawStrip = function (figure, year) {
    var id = figure.id;
    var band = figure.querySelector('.sb-season-strip__year');
    var of = function (name) { return year[name].replace(/0/g, '.'); };
    band.setAttribute('aria-label', year.description);
    replace(band, 'frost', frosts(id, of('frost'), of('chance')), 'defs');
    replace(band, 'growth', growth(id, year.growth), '.sb-season-strip__month-line');
    replace(band, 'wet', flags(id, 'wet', of('wet'), 'wet', 6), 'defs');
    Swardbook.each(band, '.sb-season-strip__window', function (old) { old.remove(); });
    ['renovation', 'overseeding'].forEach(function (kind) { bars(band, id, kind, of(kind)); });
    key(figure, year);
    inWords(figure, year);
  };
})();
