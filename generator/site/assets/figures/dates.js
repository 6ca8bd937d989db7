/* Calendar dates without clocks or time zones: year, month and day only. The book's year has no 29 February, in Python
   (generator/season/calendar_days.py) and here. Twin: days of the year. */
(function () {
  "use strict";
  var DAY = 86400000, YEAR = Swardbook.contract.year, FEBRUARY = 1;

  /* '2026-10-12' as whole days since 1970-01-01, or null when no such day exists. */
  function fromIso(text) {
    var parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text || "");
    if (!parts) { return null; }
    var moment = new Date(0);
    moment.setUTCFullYear(+parts[1], +parts[2] - 1, +parts[3]); /* Date.UTC takes the year 12 for 1912. */
    var same = +parts[1] > 0 && moment.getUTCFullYear() === +parts[1] && moment.getUTCMonth() === +parts[2] - 1 && moment.getUTCDate() === +parts[3];
    return same ? moment.getTime() / DAY : null;
  }

  function today() {
    var now = new Date();
    return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY;
  }

  function iso(day) { return new Date(day * DAY).toISOString().slice(0, 10); }

  /* 'Mon 12 Oct', in the reader's own language where the browser knows it; 'Mon, Oct 12' for a reader in a country that writes so. */
  function words(day) {
    var country = Swardbook.contract.countries[Swardbook.preferences.country()];
    return new Intl.DateTimeFormat(country && country.month_first ? "en-US" : undefined, { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" }).format(new Date(day * DAY));
  }

  /* 'Mon 12 Oct – Fri 16 Oct', or a day alone. */
  function stretch(first, last) { return first === last ? words(first) : words(first) + " – " + words(last); }

  /* 0 for 1 January; 29 February counts as the 28th. */
  function dayOfYear(text) {
    var month = +text.slice(5, 7) - 1, day = +text.slice(8);
    return YEAR.starts[month] + (month === FEBRUARY ? Math.min(day, 28) : day) - 1;
  }

  /* '12 October' for a day of the year, 0 for 1 January. */
  function dayWords(number) {
    var month = YEAR.starts.filter(function (start) { return start <= number; }).length - 1;
    return (number - YEAR.starts[month] + 1) + " " + YEAR.months[month];
  }

  Swardbook.dates = {
    fromIso: fromIso, today: today, iso: iso, words: words, stretch: stretch, dayOfYear: dayOfYear, dayWords: dayWords,
    /* '12 Oct'. */
    shortDay: function (number) { return dayWords(number).replace(/ (...).*/, " $1"); }
  };
})();
