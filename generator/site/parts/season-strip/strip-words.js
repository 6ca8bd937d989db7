/* The year of a strip in words: a row for each spell of weeks that are alike, as season-strip.html.j2 prints it. Twin: season strip.
   year: growth, frost, chance, wet, renovation, overseeding, each 52 characters. Returns rows of texts. */
Swardbook.spells = (function () {
  var words = Swardbook.contract.strip.words;

  function said(year, week) {
    function is(name) { return year[name].charAt(week) === '1'; }
    var growth = Object.keys(words.growth).filter(function (name) { return name.charAt(0) === year.growth.charAt(week); })[0];
    var work = Object.keys(words.work).filter(is).map(function (name) { return words.work[name]; }).join(', ');
    return [words.growth[growth], words.frost[is('frost') ? 2 : Number(is('chance'))], words.wet[Number(is('wet'))], work];
  }

  return function (year) {
    var rows = [];
    for (var week = 0; week < year.growth.length; week += 1) {
      var now = said(year, week), from = Swardbook.dates.shortDay(7 * week), last = rows[rows.length - 1];
      if (last && last.slice(1).join('|') === now.join('|')) last[0] = last[0].split(' to ')[0] + ' to ' + from;
      else rows.push([from].concat(now));
    }
    return rows;
  };
})();
