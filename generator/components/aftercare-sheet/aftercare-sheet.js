/* A client's own days on an aftercare sheet: today first, then those to come. The particulars come from the link, or the date
   from the form. Without them, or without scripts, the sheet reads as it was printed. */
(function () {
  "use strict";
  var dates, element; /* Those of every page, once they are read. */
  var DAMAGED = "This link is damaged, so it shows no dates. The advice below still holds: count the days from the job.";

  function list(nodes) { return Array.prototype.slice.call(nodes); }

  function stretchDates(from, to, start) {
    return from === to ? dates.words(start + from) : dates.words(start + from) + " – " + dates.words(start + to);
  }

  /* What the page knows of one kind of id: {core: {text: "Core", gone: false}}; `gone` for one that is no longer in use. */
  function knownIds(root, kind) {
    var known = {};
    list(root.querySelectorAll("[data-known=" + kind + "] [data-id]")).forEach(function (each) {
      known["id " + each.dataset.id] = { text: each.textContent, gone: each.hasAttribute("data-gone") };
    });
    return known;
  }

  function Sheet(root) {
    var panel = root.querySelector("[data-part=today]");
    var days = root.querySelector("[data-part=days]");
    var stretches = list(root.querySelectorAll("[data-from-day]"));
    var known = { grass: knownIds(root, "grass"), step: knownIds(root, "step") };

    /* The name of an id in this book; what is not in it is told among the notices, and the rest of the link kept. */
    function named(kind, id, notices) {
      var found = known[kind]["id " + id];
      if (found && !found.gone) { return found.text; }
      var what = kind === "grass" ? "grass" : "step of the work";
      notices.push("The link names a " + what + " that is not in this book now: " + id + ". " + (found ? found.text : "The rest of it holds."));
      return null;
    }

    function job(link, notices) {
      var parts = [];
      var grass = link.grass && named("grass", link.grass, notices);
      if (grass) { parts.push(grass); }
      if (link.area) { parts.push(link.area.toLocaleString() + " m²"); }
      var done = (link.done || []).map(function (id) { return named("step", id, notices); }).filter(Boolean);
      var said = parts.join(", ") + (done.length ? (parts.length ? ". " : "") + "Done: " + done.join("; ") : "");
      return said ? said + "." : "";
    }

    function current(day) {
      return stretches.filter(function (each) { return day >= +each.dataset.fromDay && day <= +each.dataset.toDay; });
    }

    /* What the stretches of today say, each thing once: what to do, then what not to do yet. */
    function now(stretchesOfToday) {
      var told = element("ul", "sb-aftercare__now");
      [".sb-aftercare__do", ".sb-aftercare__leave"].forEach(function (kind) {
        stretchesOfToday.forEach(function (stretch) {
          list(stretch.querySelectorAll(kind)).forEach(function (line) { told.appendChild(line.cloneNode(true)); });
        });
      });
      return told;
    }

    function marked(start) {
      var day = dates.today() - start;
      stretches.forEach(function (stretch) {
        var from = +stretch.dataset.fromDay, to = +stretch.dataset.toDay;
        stretch.querySelector("[data-part=dates]").textContent = stretchDates(from, to, start);
        stretch.classList.toggle("sb-aftercare__stretch--past", day > to);
        stretch.classList.toggle("sb-aftercare__stretch--today", day >= from && day <= to);
      });
      return day;
    }

    function unmarked() {
      stretches.forEach(function (stretch) {
        stretch.querySelector("[data-part=dates]").textContent = "";
        stretch.classList.remove("sb-aftercare__stretch--past", "sb-aftercare__stretch--today");
      });
    }

    /* Days gone by stand at the end of the list, shut, so that what is still to be done comes first. */
    function sorted() {
      var gone = root.querySelector("[data-part=gone]");
      var past = stretches.filter(function (each) { return each.classList.contains("sb-aftercare__stretch--past"); });
      stretches.forEach(function (each) { (past.indexOf(each) < 0 ? days : gone.querySelector("ol")).appendChild(each); });
      gone.hidden = !past.length;
    }

    function headline(day, start) {
      if (day < 0) { return "The job is on " + dates.words(start) + ". Nothing to do until then."; }
      if (current(day).length) { return "Today, " + dates.words(dates.today()) + ", is day " + day; }
      return "Day " + day + ": the sheet has run its course. Care for the lawn as usual.";
    }

    function say(parts) {
      panel.textContent = "";
      parts.forEach(function (part) { if (part) { panel.appendChild(part); } });
      panel.hidden = !panel.childNodes.length;
    }

    function notice(text) { return element("p", "sb-aftercare__notice", text); }

    function fillAreas(area) {
      list(root.querySelectorAll(".sb-calculator [data-input=area]")).forEach(function (field) {
        var input = field.querySelector(".sb-calculator__input"), unit = field.querySelector(".sb-calculator__unit");
        input.value = Swardbook.quantity.show(area, unit ? unit.value : field.getAttribute("data-metric-unit"), 6, false);
        input.dispatchEvent(new Event("input", { bubbles: true }));
        /* The answer beside the closed calculator was worked out for the usual area. */
        var usual = field.closest("details.sb-aftercare__quantity");
        usual = usual && usual.querySelector("[data-part=usual]");
        if (usual) { usual.hidden = true; }
      });
    }

    /* link: what Swardbook.clientLink read: {} for none, null for a damaged one. */
    this.open = function (link) {
      var notices = [];
      document.documentElement.classList.toggle("sb-opened-by-client", Boolean(link && link.v));
      if (link === null) { notices.push(DAMAGED); }
      var told = link ? job(link, notices) : "";
      var start = link && link.on ? dates.fromIso(link.on) : null;
      var day = start === null ? null : marked(start);
      if (day === null) { unmarked(); }
      sorted();
      say(notices.map(notice).concat(
        day === null ? [] : [element("h2", "sb-aftercare__headline", headline(day, start)), now(current(day))],
        told ? [element("p", "sb-aftercare__job", told)] : []
      ));
      if (link && link.area) { fillAreas(link.area); }
      Swardbook.tell("client-days", { start: start });
    };

    /* The stretches as days of a calendar file: [{title, from, to, text}], days counted from 1970. */
    this.events = function (start) {
      return stretches.map(function (each) {
        return {
          title: each.dataset.title, from: start + +each.dataset.fromDay, to: start + +each.dataset.toDay,
          text: list(each.querySelectorAll(".sb-aftercare__do, .sb-aftercare__leave")).map(function (line) { return line.textContent; }).join("\n")
        };
      }).sort(function (one, other) { return one.from - other.from; });
    };
  }

  function startSheet(root) {
    var sheet = Swardbook.aftercareSheet = new Sheet(root);
    function read() { sheet.open(Swardbook.clientLink.ofPage()); }

    document.addEventListener("swardbook:job-date", function (event) { sheet.open({ on: dates.iso(event.detail) }); });
    window.addEventListener("hashchange", read);
    read();
  }

  /* A day typed on the page itself. */
  function startDate(form) {
    form.hidden = false;
    form.addEventListener("input", function () {
      var start = dates.fromIso(form.elements.on.value);
      if (start !== null) { Swardbook.tell("job-date", start); }
    });
    form.addEventListener("submit", function (event) { event.preventDefault(); });
  }

  function startTake(root) {
    var sheet = document.querySelector("[data-component=aftercare-sheet]"), maker = document.querySelector("a[data-part=maker]");
    maker.href += "#" + Swardbook.clientLink.write({ sheet: sheet.dataset.sheet });
    root.hidden = false;
    root.querySelector("[data-part=print]").addEventListener("click", function () { window.print(); });
  }

  /* Once every script is read, for only then have the calculators opened their fields for the area of the link. */
  window.addEventListener("load", function () {
    dates = Swardbook.dates;
    element = Swardbook.element;
    Swardbook.component("aftercare-sheet", startSheet);
    Swardbook.component("aftercare-date", startDate);
    Swardbook.component("aftercare-take", startTake);
  });
})();
