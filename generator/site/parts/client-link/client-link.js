/* Makes a client's link, its code and a message. Everything stays on this page. */
(function () {
  "use strict";
  var dates = Swardbook.dates;
  var SVG = "http://www.w3.org/2000/svg";
  var QUIET_MODULES = 4; /* White around a code, ISO/IEC 18004. */
  var NO_CODE = "No code could be drawn here. The link above does the same job.";

  function drawn(tag, attributes) {
    var made = document.createElementNS(SVG, tag);
    Object.keys(attributes).forEach(function (name) { made.setAttribute(name, attributes[name]); });
    return made;
  }

  /* A code as a drawing: dark on white whatever the page's colours. Medium error correction, as on the printed sheets. */
  function code(text) {
    var modules = window.uqr.encode(text, { ecc: "M", border: 0 }).data;
    var size = modules.length + 2 * QUIET_MODULES;
    var path = "";
    modules.forEach(function (row, y) {
      row.forEach(function (dark, x) { if (dark) { path += "M" + (x + QUIET_MODULES) + " " + (y + QUIET_MODULES) + "h1v1h-1z"; } });
    });
    var picture = drawn("svg", { viewBox: "0 0 " + size + " " + size, role: "img", "shape-rendering": "crispEdges", "aria-label": "Code that opens the link" });
    picture.appendChild(drawn("rect", { width: size, height: size, fill: "#fff" }));
    picture.appendChild(drawn("path", { d: path, fill: "#000" }));
    return picture;
  }

  /* A measure of the lawn as a link has it, 0 for none. */
  function measure(name, text) {
    var unit = Swardbook.clientLink.units[name];
    return text.trim() ? Swardbook.quantity.read(text, unit) / Swardbook.quantity.unit(unit).factor : 0;
  }

  function startMaker(form) {
    var fields = form.elements;
    var boxes = Swardbook.list(form.querySelectorAll("[data-steps]"));
    function part(name) { return form.querySelector("[data-part=" + name + "]"); }

    function steps() {
      var open = boxes.filter(function (box) { return box.dataset.steps === fields.sheet.value; })[0];
      return open ? Swardbook.list(open.querySelectorAll("input")) : [];
    }

    function chosen() {
      var on = dates.fromIso(fields.on.value);
      return {
        on: on === null ? null : dates.iso(on), grass: fields.grass.value, in: Swardbook.preferences.country(),
        area: measure("area", fields.area.value), rate: measure("rate", fields.rate.value), even: measure("even", fields.even.value),
        done: steps().filter(function (box) { return box.checked; }).map(function (box) { return box.value; })
      };
    }

    function showLink(address, day) {
      var link = part("link");
      if (!link) { return; }
      link.textContent = address;
      part("code").textContent = "";
      try {
        part("code").appendChild(code(address));
      } catch (problem) {
        part("code").textContent = NO_CODE;
      }
      var message = fields.sheet.selectedOptions[0].dataset.message;
      part("message").value = Swardbook.told(message).replace("{day}", dates.words(day)).replace("{link}", address) + "\n" + form.dataset.signature;
      ready(part("message").value);
    }

    function subject() { return fields.sheet.selectedOptions[0].textContent; }

    /* The message to whoever the reader then chooses, in the device's own messages and mail (RFC 6068 has its lines end with CR LF); empty for none yet. */
    function ready(message) {
      part("text-message").href = "sms:?&body=" + encodeURIComponent(message);
      part("mail").href = "mailto:?subject=" + encodeURIComponent(subject()) + "&body=" + encodeURIComponent(message.replace(/\n/g, "\r\n"));
      part("text-message").hidden = part("mail").hidden = !message;
    }

    function clear(problem) {
      if (part("link")) { part("link").textContent = ""; part("code").textContent = ""; part("message").value = ""; ready(""); }
      part("problem").textContent = problem;
    }

    function update() {
      boxes.forEach(function (box) { box.hidden = box.dataset.steps !== fields.sheet.value; });
      part("area-problem").textContent = "";
      var asked;
      try {
        asked = chosen();
      } catch (problem) {
        part("area-problem").textContent = Swardbook.sentenceOf(problem);
        return clear("No link yet: the area, or a figure of the sprinklers, cannot be read.");
      }
      if (!asked.on) { return clear("No link yet: choose the day of the job."); }
      var fragment = Swardbook.clientLink.write(asked);
      if (!fragment) { return clear("No link yet: it holds an area up to 999,999 m² and fewer steps than this."); }
      part("problem").textContent = "";
      part("open").href = form.dataset.here + fields.sheet.value + ".html#" + fragment;
      showLink(form.dataset.address + fields.sheet.value + ".html#" + fragment, dates.fromIso(asked.on));
    }

    /* The id that a retired one stands for now; what is said of it goes among the notices. */
    function present(kind, id, left) {
      var gone = Swardbook.list(form.querySelectorAll("[data-retired=" + kind + "] [data-id]")).filter(function (each) { return each.dataset.id === id; })[0];
      if (gone) { left.push(gone.textContent); }
      return gone ? gone.dataset.instead : id;
    }

    /* Ticks what was done; what this job's list has not is named. */
    function tick(done, left) {
      steps().forEach(function (box) { box.checked = false; });
      done.map(function (id) { return present("step", id, left); }).filter(Boolean).forEach(function (id) {
        var box = steps().filter(function (each) { return each.value === id; })[0];
        if (box) { box.checked = true; } else { left.push("'" + id + "' is not among the steps of this job."); }
      });
    }

    /* What is known of the chosen lawn, for a page that nothing was handed over to; its latest job says which day. */
    function fillFromLawn() {
      var lawn = Swardbook.lawns.chosen();
      if (!lawn) { return; }
      var job = Swardbook.lawns.jobs(lawn)[0];
      Swardbook.choose(fields.grass, lawn.grass);
      fields.area.value = lawn.area || "";
      Object.keys(Swardbook.clientLink.measured).forEach(function (name) { fields[name].value = lawn.facts[Swardbook.clientLink.measured[name]] || ""; });
      if (job) { fields.on.value = job.row.on; }
    }

    /* What another page of the book hands over. */
    function fill() {
      var given = Swardbook.clientLink.ofPage(), left = [];
      fields.on.value = dates.iso(dates.today());
      if (given === null) { left.push("This link is damaged, so nothing was filled in from it."); given = {}; }
      part("from").hidden = !Object.keys(given).length;
      if (!Object.keys(given).length) { fillFromLawn(); }
      if (given.on) { fields.on.value = given.on; }
      ["sheet", "grass"].forEach(function (name) {
        var id = given[name] && present(name, given[name], left);
        if (id && !Swardbook.choose(fields[name], id)) { left.push("There is no " + name + " '" + id + "' in this book now."); }
      });
      Object.keys(Swardbook.clientLink.units).forEach(function (name) {
        if (given[name]) { fields[name].value = given[name] + " " + Swardbook.clientLink.units[name]; }
      });
      tick(given.done || [], left);
      part("notice").textContent = left.join("\n");
      part("notice").hidden = !left.length;
      update();
    }

    /* Where the browser gives no clipboard, or refuses it, the text is marked, ready to be copied by hand. */
    function copies(button, field) {
      if (!button) { return; }
      function mark() {
        if (field.select) { field.select(); } else { window.getSelection().selectAllChildren(field); }
      }
      button.addEventListener("click", function () {
        var text = field.select ? field.value : field.textContent;
        if (!text) { return; }
        Swardbook.copy(text, function () { button.textContent = "Copied"; }, mark);
      });
    }

    part("to-link").addEventListener("click", function () {
      part("link-title").scrollIntoView();
      part("link-title").focus({ preventScroll: true });
    });
    copies(part("copy-link"), part("link"));
    copies(part("copy-message"), part("message"));
    Swardbook.share(part("share"), function () { return part("message").value ? { title: subject(), text: part("message").value } : null; });
    form.addEventListener("input", update);
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    Swardbook.clientLink.onLink(fill, function () { return ""; });
    document.addEventListener("swardbook:lawn-chosen", fill);
    form.hidden = false;
    fill();
  }

  Swardbook.component("client-link", startMaker);
})();
