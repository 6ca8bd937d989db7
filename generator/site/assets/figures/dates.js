/* Calendar dates without clocks or time zones: year, month and day only. */
(function () {
  "use strict";
  var DAY = 86400000;

  /* '2026-10-12' as whole days since 1970-01-01, or null when no such day exists. */
  function fromIso(text) {
    var parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text || "");
    if (!parts) { return null; }
    var moment = new Date(Date.UTC(+parts[1], +parts[2] - 1, +parts[3]));
    var same = moment.getUTCFullYear() === +parts[1] && moment.getUTCMonth() === +parts[2] - 1 && moment.getUTCDate() === +parts[3];
    return same ? moment.getTime() / DAY : null;
  }

  function today() {
    var now = new Date();
    return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY;
  }

  function iso(day) { return new Date(day * DAY).toISOString().slice(0, 10); }

  /* 'Mon 12 Oct', in the reader's own language where the browser knows it. */
  function words(day) {
    return new Intl.DateTimeFormat(undefined, { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" }).format(new Date(day * DAY));
  }

  window.Swardbook = window.Swardbook || {};
  window.Swardbook.dates = { fromIso: fromIso, today: today, iso: iso, words: words };
})();
