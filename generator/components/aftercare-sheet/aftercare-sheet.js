/* A client's own dates on an aftercare sheet. The date comes from the link (#v=1&on=2026-10-12) or from the form. */
(function () {
  "use strict";
  var dates = window.Swardbook.dates;
  var LONGEST_FRAGMENT = 300;
  var KNOWN = { v: /^1$/, on: /^\d{4}-\d{2}-\d{2}$/, grass: /^[a-z0-9-]{1,60}$/, area: /^\d{1,6}(\.\d{1,2})?$/ };

  /* {} for no particulars, null for a damaged link, else the particulars as checked text. */
  function particulars(fragment) {
    var text = fragment.replace(/^#/, "");
    if (text.indexOf("=") < 0) { return {}; }
    if (text.length > LONGEST_FRAGMENT) { return null; }
    var found = {};
    var whole = text.split("&").every(function (pair) {
      var cut = pair.indexOf("=");
      var name = pair.slice(0, cut), value = pair.slice(cut + 1);
      if (!Object.prototype.hasOwnProperty.call(KNOWN, name) || !KNOWN[name].test(value)) { return false; }
      found[name] = value;
      return true;
    });
    if (!whole || found.v !== "1" || (found.on && dates.fromIso(found.on) === null)) { return null; }
    return found;
  }

  function stretchDates(from, to, start) {
    return from === to ? dates.words(start + from) : dates.words(start + from) + " – " + dates.words(start + to);
  }

  Swardbook.component("aftercare-sheet", function (root) {
    var note = root.querySelector("[data-part=today]");
    var stretches = Array.prototype.slice.call(root.querySelectorAll("[data-from-day]"));

    function say(text) { note.textContent = text; note.hidden = !text; }

    function show(start) {
      var day = dates.today() - start, current = null;
      stretches.forEach(function (stretch) {
        var from = +stretch.dataset.fromDay, to = +stretch.dataset.toDay;
        stretch.querySelector("[data-part=dates]").textContent = stretchDates(from, to, start);
        stretch.classList.toggle("sb-aftercare__stretch--past", day > to);
        stretch.classList.toggle("sb-aftercare__stretch--today", day >= from && day <= to);
        if (!current && day >= from && day <= to) { current = stretch; }
      });
      if (day < 0) { say("The job is on " + dates.words(start) + ". Nothing to do until then."); }
      else if (current) {
        var first = current.querySelector("ul li");
        say("Today is day " + day + ". " + (first ? first.textContent : ""));
      } else { say("Day " + day + ": the sheet has run its course. Care for the lawn as usual."); }
    }

    function read() {
      var found = particulars(window.location.hash);
      if (found === null) { say("This link is damaged, so it shows no dates. The advice below still holds: count the days from the job."); return; }
      if (found.on) { show(dates.fromIso(found.on)); }
    }

    document.addEventListener("swardbook:job-date", function (event) { show(event.detail); });
    window.addEventListener("hashchange", read);
    read();
  });

  Swardbook.component("aftercare-link", function (form) {
    var output = form.querySelector("[data-part=link]"), copy = form.querySelector("[data-part=copy]");
    form.hidden = false;

    function update() {
      var start = dates.fromIso(form.elements.on.value);
      if (start === null) { output.textContent = ""; return; }
      document.dispatchEvent(new CustomEvent("swardbook:job-date", { detail: start }));
      if (!form.dataset.address) { return; }
      var grass = form.elements.grass.value;
      output.textContent = form.dataset.address + "#v=1&on=" + dates.iso(start) + (grass ? "&grass=" + grass : "");
    }

    form.addEventListener("input", update);
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    if (copy) {
      copy.addEventListener("click", function () {
        if (!output.textContent || !navigator.clipboard) { return; }
        navigator.clipboard.writeText(output.textContent).then(function () { copy.textContent = "Copied"; });
      });
    }
  });
})();
