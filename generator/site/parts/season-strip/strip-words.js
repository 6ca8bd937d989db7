/* The year of a strip in words: a row for each spell of weeks that are alike, as season-strip.html.j2 prints it.
   year: growth, frost, wet, renovation, overseeding, each 52 characters. Returns rows of texts. */
Swardbook.spells = (function () {
  var months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  var states = { d: 'Dormant', s: 'Slow', g: 'Growing', p: 'Peak growth' };

  /* '8 Jan' for week 1, counting from 0: the book's year is one without a leap day, such as 2025. */
  function starts(week) {
    var day = new Date(Date.UTC(2025, 0, 1 + 7 * week));
    return day.getUTCDate() + ' ' + months[day.getUTCMonth()];
  }

  function said(year, week) {
    var is = function (name) { return year[name].charAt(week) === '1'; };
    var work = [is('renovation') ? 'renovate' : '', is('overseeding') ? 'overseed' : ''].filter(Boolean).join(', ');
    return [states[year.growth.charAt(week)], is('frost') ? 'likely' : 'unlikely', is('wet') ? 'often too wet' : '', work];
  }

  return function (year) {
    var rows = [];
    for (var week = 0; week < year.growth.length; week += 1) {
      var now = said(year, week);
      var last = rows[rows.length - 1];
      if (last && last.slice(1).join('|') === now.join('|')) last[0] = last[0].split(' to ')[0] + ' to ' + starts(week);
      else rows.push([starts(week)].concat(now));
    }
    return rows;
  };
})();
