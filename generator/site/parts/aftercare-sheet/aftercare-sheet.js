/* A client's own days on an aftercare sheet: today first, then those to come. The particulars come from the link, or the date
   from the form. Without them, or without scripts, the sheet reads as it was printed. */
(function () {
  "use strict";
  var dates = Swardbook.dates, element = Swardbook.element, list = Swardbook.list;
  var DAMAGED = "This link is damaged, so it shows no dates. The advice below still applies: count the days from the job.";

  /* What the page knows of one kind of id: {"id core": {name: "Core", gone: null}}; gone: what to say of one that has left the book;
     metric, us: the height that a grass is kept at. */
  function knownIds(root, kind) {
    var known = {};
    list(root.querySelectorAll("[data-known=" + kind + "] [data-id]")).forEach(function (each) {
      known["id " + each.dataset.id] = { name: each.textContent, gone: each.dataset.gone || null, metric: each.dataset.metric, us: each.dataset.us };
    });
    return known;
  }

  /* What a link measures, by the input of the calculators that it fills in. */
  var ASKED = { area: "area", rate: "precipitation_rate", even: "uniformity" };

  function Sheet(root) {
    var panel = root.querySelector("[data-part=today]");
    var days = root.querySelector("[data-part=days]");
    var stretches = list(root.querySelectorAll("[data-from-day]"));
    var known = { grass: knownIds(root, "grass"), step: knownIds(root, "step") };
    var answers = new Swardbook.aftercareAnswers(root);

    /* The name of an id as it is now; what is not in this book, or not any more, is told among the notices, and the rest of the link kept. */
    function named(kind, id, notices) {
      var found = known[kind]["id " + id];
      if (!found) { notices.push("This link names a " + (kind === "grass" ? "grass" : "step") + " that is not in this book: " + id + ". The rest still applies."); }
      else if (found.gone) { notices.push(found.gone); }
      return found ? found.name : null;
    }

    /* The lawn and what was done to it, as a line with its area in the reader's units; null where the link says nothing of them. */
    function job(link, notices) {
      var said = [], grass = link.grass && named("grass", link.grass, notices);
      if (grass) { said.push(grass); }
      if (link.area) { said.push((grass ? ", " : ""), [whole(link.area, "m2") + " m²", whole(link.area, "ft2") + " ft²"]); }
      var done = (link.done || []).map(function (id) { return named("step", id, notices); }).filter(Boolean);
      if (done.length) { said.push((said.length ? ". " : "") + "Done: " + done.join("; ")); }
      return said.length ? Swardbook.words(element("p", "sb-aftercare__job"), said.concat(".")) : null;
    }

    /* An area [m2] as a number of another unit: whole, but for what the link itself says. */
    function whole(area, unit) {
      return (unit === "m2" ? area : Math.round(area / Swardbook.quantity.unit(unit).factor)).toLocaleString();
    }

    function marked(start) {
      var day = dates.today() - start;
      stretches.forEach(function (stretch) {
        var from = +stretch.dataset.fromDay, to = +stretch.dataset.toDay;
        stretch.querySelector("[data-part=dates]").textContent = dates.stretch(start + from, start + to);
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

    /* Days that have passed stand at the end of the list, shut, so that what is still to be done comes first. */
    function sorted() {
      var gone = root.querySelector("[data-part=gone]");
      var past = stretches.filter(function (each) { return each.classList.contains("sb-aftercare__stretch--past"); });
      stretches.forEach(function (each) { (past.indexOf(each) < 0 ? days : gone.querySelector("ol")).appendChild(each); });
      gone.hidden = !past.length;
    }

    function headline(day, start) {
      if (day < 0) { return "The job is on " + dates.words(start) + ", " + (day === -1 ? "tomorrow" : "in " + -day + " days"); }
      return day > answers.lastDay ? "Day " + day + ": this sheet is finished" : "Today, " + dates.words(dates.today()) + ", is day " + day;
    }

    /* Under the headline: what is asked, answered for this day. */
    function told(day, start, link) {
      if (day < 0) { return [element("p", null, "Until then, use, mow and water the lawn as usual."), answers.before(day, start)]; }
      return [day > answers.lastDay ? answers.end() : null, answers.of(day, start, link, known.grass["id " + link.grass])];
    }

    function say(parts) {
      panel.textContent = "";
      parts.forEach(function (part) { if (part) { panel.appendChild(part); } });
      panel.hidden = !panel.childNodes.length;
    }

    function notice(text) { return element("p", "sb-aftercare__notice", text); }

    /* A measure of the lawn [SI], into every calculator that asks for it. */
    function fillIn(asked, si) {
      list(root.querySelectorAll(".sb-calculator [data-input=" + asked + "]")).forEach(function (field) {
        var input = field.querySelector(".sb-calculator__input"), unit = field.querySelector(".sb-calculator__unit");
        input.value = Swardbook.quantity.show(si, unit ? unit.value : field.getAttribute("data-metric-unit"), 6, false);
        input.dispatchEvent(new Event("input", { bubbles: true }));
        /* The answer beside the closed calculator was worked out for the usual area. */
        var usual = field.closest("details.sb-aftercare__quantity");
        usual = usual && usual.querySelector("[data-part=usual]");
        if (usual) { usual.hidden = true; }
      });
    }

    var sheet = this;
    this.start = null; /* Day of the job, from 1970; null while the sheet has no dates. */
    this.fragment = ""; /* The particulars as a link has them; empty while there is no day that a link may carry. */

    /* link: what Swardbook.clientLink read: {} for none, null for a damaged one. */
    this.open = function (link) {
      var notices = [];
      document.documentElement.classList.toggle("sb-opened-by-client", Boolean(link && link.v));
      if (link === null) { notices.push(DAMAGED); }
      var lawn = link ? job(link, notices) : null;
      var start = link && link.on ? dates.fromIso(link.on) : null;
      var day = start === null ? null : marked(start);
      if (day === null) { unmarked(); }
      sorted();
      answers.place(start);
      Object.keys(ASKED).forEach(function (name) {
        if (link && link[name]) { fillIn(ASKED[name], Swardbook.quantity.read(String(link[name]), Swardbook.clientLink.units[name])); }
      });
      /* What is asked today comes first; what the link names and the book has not, last. */
      say([].concat(day === null ? [] : [element("h2", "sb-aftercare__headline", headline(day, start))].concat(told(day, start, link)), lawn, notices.map(notice)));
      sheet.start = start;
      sheet.fragment = start === null ? "" : Swardbook.clientLink.write(link) || "";
      Swardbook.tell("client-days", { start: start });
    };

    /* Where the sheet opens elsewhere, with its days where it has any; empty in a book without an address. */
    this.address = function () { return root.dataset.address && sheet.fragment ? root.dataset.address + "#" + sheet.fragment : root.dataset.address; };

    /* The days with their dates as a calendar file: {name, text}. An entry keeps its id for as long as its days begin where they do,
       so that a file fetched again changes what a phone has and adds nothing. */
    this.calendar = function (made) {
      var on = dates.iso(sheet.start), address = sheet.address();
      var entries = stretches.map(function (each, number) {
        var from = each.dataset.fromDay;
        var before = stretches.slice(0, number).filter(function (other) { return other.dataset.fromDay === from; }).length;
        var lines = list(each.querySelectorAll(".sb-aftercare__do, .sb-aftercare__leave")).map(function (line) { return line.textContent; });
        return {
          id: root.dataset.sheet + "-" + on.replace(/-/g, "") + "-day-" + from + (before ? "-" + (before + 1) : ""),
          title: root.dataset.name + ": " + each.dataset.title, text: lines.concat(address || []).join("\n"),
          first: sheet.start + +from, last: sheet.start + +each.dataset.toDay, address: address
        };
      });
      return { name: root.dataset.sheet + "-" + on + ".ics", text: Swardbook.calendarFile(root.dataset.name, entries, root.dataset.domain, made) };
    };
  }

  function startSheet(root) {
    var sheet = Swardbook.aftercareSheet = new Sheet(root);
    /* A client who never chose a place reads the sheet as people there say it. */
    function read() {
      var link = Swardbook.clientLink.ofPage();
      if (link && link.in && !Swardbook.preferences.country()) { Swardbook.preferences.set("country", link.in); }
      sheet.open(link);
    }

    document.addEventListener("swardbook:job-date", function (event) { sheet.open({ on: dates.iso(event.detail) }); });
    Swardbook.clientLink.onLink(read, function () { return sheet.fragment; });
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
    if (maker) { maker.href += "#" + Swardbook.clientLink.write({ sheet: sheet.dataset.sheet }); } /* Clients have no page that makes links. */
    root.hidden = false;
    root.querySelector("[data-part=print]").addEventListener("click", function () { window.print(); });
    /* With the client's own days, so that whoever waters sees them too; a book without an address has nothing that opens elsewhere. */
    if (sheet.dataset.address) {
      Swardbook.share(root.querySelector("[data-part=share]"), function () { return { title: sheet.dataset.name, url: Swardbook.aftercareSheet.address() }; });
    }
    var calendar = root.querySelector("[data-part=calendar]");
    function offer() { calendar.hidden = !Swardbook.aftercareSheet.fragment; }
    calendar.addEventListener("click", function () {
      var file = Swardbook.aftercareSheet.calendar(new Date());
      Swardbook.download(file.name, "text/calendar", file.text);
    });
    document.addEventListener("swardbook:client-days", offer);
    offer();
  }

  /* Once every script is read, for only then have the calculators opened their fields for the area of the link. */
  window.addEventListener("load", function () {
    Swardbook.component("aftercare-sheet", startSheet);
    Swardbook.component("aftercare-date", startDate);
    Swardbook.component("aftercare-take", startTake);
  });
})();
