/* "This month" for a grass and a place. What is due comes from assets/seasons/<grass>--<place>.js, a small script of
   its own, because a page opened from a folder may load scripts but may not fetch data. */
(function () {
  var seasons = {};
  var monthNames = Swardbook.contract.year.months;

  /* Called by each seasons file with what it knows. */
  Swardbook.season = function (grass, place, season) {
    seasons[grass + '--' + place] = season;
  };

  function link(text, address, className) {
    var made = Swardbook.element('a', className, text);
    made.href = address;
    return made;
  }

  function dueList(due, root) {
    var list = Swardbook.element('ul', 'sb-picker__due');
    due.forEach(function (item) {
      var row = list.appendChild(Swardbook.element('li'));
      row.appendChild(link(item.task, root + item.url, 'sb-picker__job'));
      row.appendChild(document.createTextNode(' '));
      row.appendChild(Swardbook.element('span', 'sb-note', item.when));
      row.appendChild(Swardbook.element('br'));
      row.appendChild(document.createTextNode(item.say + ' '));
      if (item.because) row.appendChild(Swardbook.element('span', 'sb-note', item.because));
    });
    return list;
  }

  Swardbook.component('picker', function (root) {
    var form = root.querySelector('.sb-picker__form');
    var plain = root.querySelector('.sb-picker__plain');
    var answer = root.querySelector('.sb-picker__answer');
    var grass = root.querySelector('[data-choice="grass"]');
    var place = root.querySelector('[data-choice="place"]');
    var folder = root.getAttribute('data-seasons');
    var top = folder.replace(/assets\/seasons\/$/, '');
    var page = function (kind, path) { return root.getAttribute('data-' + kind) + path + '.html'; };

    function restore(select, kept) {
      var known = Array.prototype.some.call(select.options, function (option) { return option.value === kept; });
      if (known) select.value = kept;
    }

    function show(season) {
      var month = new Date().getMonth();
      var calendar = page('calendars', place.value + '/' + grass.value);
      var due = season.months[month].due;
      answer.textContent = '';
      answer.appendChild(Swardbook.element('h3', 'sb-picker__month', monthNames[month] + ': ' + season.grass + ' at ' + season.place));
      if (season.summary) answer.appendChild(Swardbook.words(Swardbook.element('p'), season.summary));
      if (season.weeks) answer.appendChild(Swardbook.drawStrip('picker-strip', season));
      answer.appendChild(due.length ? dueList(due, top) : Swardbook.element('p', '', 'Nothing is due this month.'));
      var ways = answer.appendChild(Swardbook.element('p', 'sb-picker__ways'));
      ways.appendChild(link('Renovation guide', page('guides', grass.value), 'sb-button'));
      ways.appendChild(link('The whole year', calendar, 'sb-button sb-button--quiet'));
      ways.appendChild(link(monthNames[month] + ' to print', calendar + '#' + monthNames[month].toLowerCase(), 'sb-button sb-button--quiet'));
      plain.hidden = true;
    }

    function missing() {
      answer.textContent = '';
      answer.appendChild(Swardbook.element('p', '', 'This copy of the book does not have the year of this grass and place, but it has the calendars below.'));
      plain.hidden = false;
    }

    function choose() {
      var wanted = grass.value + '--' + place.value;
      /* A slow file must not overwrite the answer to a later choice. */
      var current = function (then) { return function () { if (grass.value + '--' + place.value === wanted) then(seasons[wanted]); }; };
      Swardbook.load(folder + wanted + '.js').then(current(show)).catch(current(missing));
      Swardbook.tell('chosen', { grass: grass.value, place: place.value });
    }

    function remembered() {
      restore(grass, Swardbook.preferences.get('grass'));
      restore(place, Swardbook.preferences.get('place'));
    }

    remembered();
    document.addEventListener('swardbook:lawn-chosen', function () {
      remembered();
      choose();
    });
    form.addEventListener('change', function (event) {
      Swardbook.preferences.set(event.target.getAttribute('data-choice'), event.target.value);
      choose();
    });
    form.addEventListener('submit', function (event) { event.preventDefault(); });
    form.hidden = false;
    choose();
  });
})();
