/* The particulars of a job in a client's link, behind its #: 'v=1&on=2026-10-12&grass=couch&area=240&done=core.topdress'.
   Plain ISO dates, square metres and ids; no names. Links that were handed out are opened for years: what this
   version reads is read for good, and whatever changes gets another number. */
(function () {
  "use strict";
  var VERSION = "1";
  var LONGEST = 300;
  var MOST_STEPS = 40;
  var ID = "[a-z0-9-]{1,60}";
  var KNOWN = {
    v: /^1$/, on: /^\d{4}-\d{2}-\d{2}$/, grass: new RegExp("^" + ID + "$"), area: /^\d{1,6}(\.\d{1,2})?$/,
    done: new RegExp("^" + ID + "(\\." + ID + "){0," + (MOST_STEPS - 1) + "}$"), sheet: new RegExp("^" + ID + "$")
  };
  var ORDER = ["on", "sheet", "grass", "area", "done"];

  /* fragment: with or without its #. Returns {} for none, null for a damaged one, else the particulars: on [ISO date],
     grass, sheet [ids], area [m2, a number], done [list of step ids]. An id may be one that this book has not. */
  function read(fragment) {
    var text = String(fragment).replace(/^#/, "");
    if (!text) { return {}; }
    if (text.length > LONGEST) { return null; }
    var found = {};
    var whole = text.split("&").every(function (pair) {
      var cut = pair.indexOf("=");
      var name = pair.slice(0, Math.max(cut, 0)), value = pair.slice(cut + 1);
      var twice = Object.prototype.hasOwnProperty.call(found, name);
      if (twice || !Object.prototype.hasOwnProperty.call(KNOWN, name) || !KNOWN[name].test(value)) { return false; }
      found[name] = value;
      return true;
    });
    if (!whole || found.v !== VERSION) { return null; }
    if (found.on && Swardbook.dates.fromIso(found.on) === null) { return null; }
    if (found.area) {
      found.area = Number(found.area);
      if (!(found.area > 0)) { return null; }
    }
    if (found.done) { found.done = found.done.split("."); }
    return found;
  }

  /* The page's own fragment; one that names a heading of the page is none of ours. */
  function ofPage() {
    var text = window.location.hash.replace(/^#/, "");
    return text.indexOf("=") < 0 && document.getElementById(text) ? {} : read(text);
  }

  /* The fragment for these particulars, or null where it would be too long to be read back. */
  function write(particulars) {
    var text = ORDER.reduce(function (sum, name) {
      var value = particulars[name];
      if (name === "done" && value) { value = value.join("."); }
      if (name === "area" && value) { value = String(Math.round(value * 100) / 100); }
      return value ? sum + "&" + name + "=" + value : sum;
    }, "v=" + VERSION);
    return read(text) ? text : null;
  }

  window.Swardbook.clientLink = { read: read, ofPage: ofPage, write: write, longest: LONGEST };
})();
