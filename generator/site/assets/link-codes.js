/* What stands behind the # of a link, 'v=1&on=2026-10-12&grass=couch': particulars of a calculator, of a job, or of a job for its client.
   Links that were handed out are opened for years: what this version reads is read for good, and whatever changes gets another number. */
Swardbook.fragment = (function () {
  "use strict";
  var VERSION = "1", LONGEST = 300;

  return {
    longest: LONGEST, begin: "v=" + VERSION,
    /* {name: value} with the version as v, or null for what is damaged. sound(name, value) gives the value, or null where it is none. */
    read: function (fragment, sound) {
      var text = String(fragment).replace(/^#/, ""), found = {};
      var whole = text.length <= LONGEST && text.split("&").every(function (pair) {
        var cut = pair.indexOf("="), name = pair.slice(0, Math.max(cut, 0)), value = pair.slice(cut + 1);
        var read = Swardbook.own(found, name) ? null : name !== "v" ? sound(name, value) : value === VERSION ? value : null;
        if (read !== null) { found[name] = read; }
        return read !== null;
      });
      return whole && found.v ? found : null;
    }
  };
})();

/* The particulars of a job in a client's link: 'v=1&on=2026-10-12&grass=couch&area=240&done=core.topdress'. Plain ISO dates, ids, and
   measures of the lawn in one unit each; no names. */
(function () {
  "use strict";
  var MOST_STEPS = 40;
  var ID = "[a-z0-9-]{1,60}";
  var KNOWN = {
    on: /^2[01]\d{2}-\d{2}-\d{2}$/, grass: new RegExp("^" + ID + "$"), area: /^\d{1,6}(\.\d{1,2})?$/,
    rate: /^\d{1,3}(\.\d{1,2})?$/, even: /^\d{1,3}(\.\d{1,2})?$/,
    done: new RegExp("^" + ID + "(\\." + ID + "){0," + (MOST_STEPS - 1) + "}$"), sheet: new RegExp("^" + ID + "$"), in: /^[A-Z]{2}$/
  };
  var ORDER = ["on", "sheet", "grass", "area", "rate", "even", "in", "done"];
  /* What a link measures, with its unit: the grass, how fast the sprinklers water, and how evenly. */
  var UNITS = { area: "m2", rate: "mm/h", even: "%" };
  /* The questions of the inspection that measure the last two. */
  var MEASURED = { rate: "sprinkler-rate", even: "sprinkler-evenness" };

  /* fragment: with or without its #. Returns {} for none, null for a damaged one, else the particulars: on [ISO date],
     grass, sheet [ids], in [country, ISO 3166], area [m2], rate [mm/h] and even [%, of the driest quarter], done [list of step ids]. An id may be one that this book has not. */
  function read(fragment) {
    if (!String(fragment).replace(/^#/, "")) { return {}; }
    var found = Swardbook.fragment.read(fragment, function (name, value) { return Swardbook.own(KNOWN, name) && KNOWN[name].test(value) ? value : null; });
    if (!found || (found.on && Swardbook.dates.fromIso(found.on) === null)) { return null; }
    var sound = Object.keys(UNITS).every(function (name) {
      if (found[name] === undefined) { return true; }
      found[name] = Number(found[name]);
      return found[name] > 0;
    });
    if (!sound || found.even > 100) { return null; }
    if (found.done) { found.done = found.done.split("."); }
    return found;
  }

  /* Whether the page's fragment is a place on it, and so none of ours: a heading, or its top. */
  function isPlace() {
    var text = window.location.hash.replace(/^#/, "");
    return text.indexOf("=") < 0 && (!text || Boolean(document.getElementById(text)));
  }

  /* What the page's own fragment says. */
  function ofPage() { return isPlace() ? {} : read(window.location.hash); }

  /* Runs `open` for each later link. A jump to a place on the page is none: it keeps the particulars of `fragment()`, and puts them
     back into the address for whoever reloads or keeps the page. */
  function onLink(open, fragment) {
    window.addEventListener("hashchange", function () {
      if (!isPlace()) { open(); }
      else if (fragment()) { window.history.replaceState(window.history.state, "", "#" + fragment()); }
    });
  }

  /* The fragment for these particulars, or null where it would be too long to be read back. */
  function write(particulars) {
    var text = ORDER.reduce(function (sum, name) {
      var value = particulars[name];
      if (name === "done" && value) { value = value.join("."); }
      if (Swardbook.own(UNITS, name) && value) { value = String(Math.round(value * 100) / 100); }
      return value ? sum + "&" + name + "=" + value : sum;
    }, Swardbook.fragment.begin);
    return read(text) ? text : null;
  }

  Swardbook.clientLink = { read: read, ofPage: ofPage, onLink: onLink, write: write, units: UNITS, measured: MEASURED };
})();
