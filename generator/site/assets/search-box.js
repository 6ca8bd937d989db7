/* The search field in the header: opens with a click or the '/' key, fetches the book's words on the first focus and never before,
   and is worked with the keys of a list: arrows, Enter, Escape. */
(function () {
  "use strict";
  var script = document.currentScript.src;
  var PARTS = ["vendor/minisearch.js", "vendor/stemmer.js", "search/search.js", "search/book.js"];
  var HINT = "Type to start searching", READING = "Opening the book …", LOST = "Search did not load. Every grass, task and calculator is listed on its own page above.";

  function ready() {
    return Promise.all(PARTS.map(function (path) { return Swardbook.load(new URL(path, script).href); })).then(function () { return Swardbook.search.ready; });
  }

  function address(path) { return new URL("../" + path, script).href; }

  function types(element) {
    return element && (element.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(element.tagName));
  }

  function start(root) {
    var toggle = document.getElementById("__search"), box = root.querySelector("input"), list = root.querySelector("ol");
    var status = root.querySelector("[role=status]"), form = root.querySelector("form"), shown = null, before = null;

    function open(wanted) { if (toggle.checked !== wanted) { toggle.click(); } }

    function show() {
      var text = box.value.trim();
      if (!text) {
        shown = null;
        list.replaceChildren();
        status.textContent = HINT;
        return;
      }
      if (!Swardbook.search || !Swardbook.search.ask) { status.textContent = READING; return; }
      if (box.value === shown) { return; }
      shown = box.value;
      Swardbook.search.show(box.value, list, status, address);
    }

    function links() { return Array.prototype.slice.call(list.querySelectorAll("a")); }

    /* From the field to the first result, on from one to the next, and back up into the field. */
    function step(by) {
      var stops = [box].concat(links()), at = stops.indexOf(document.activeElement);
      stops[(Math.max(at, 0) + by + stops.length) % stops.length].focus();
    }

    /* Whoever leaves with Escape is back where they came from. */
    function close() {
      open(false);
      document.activeElement.blur();
      if (before && document.contains(before)) { before.focus(); }
    }

    box.addEventListener("focus", function (event) {
      if (event.relatedTarget && !root.contains(event.relatedTarget)) { before = event.relatedTarget; }
      open(true);
      ready().then(show, function () { status.textContent = LOST; });
    });
    box.addEventListener("input", show);
    toggle.addEventListener("change", function () { if (toggle.checked && document.activeElement !== box) { box.focus(); } });
    form.addEventListener("reset", function () { window.setTimeout(function () { show(); box.focus(); }); });
    form.addEventListener("submit", function (event) {
      event.preventDefault();
      show();
      if (links().length) { links()[0].click(); }
    });
    list.addEventListener("click", function (event) { if (event.target.closest("a")) { open(false); } });
    root.addEventListener("keydown", function (event) {
      if (event.key === "ArrowDown" || event.key === "ArrowUp") { event.preventDefault(); step(event.key === "ArrowDown" ? 1 : -1); }
      else if (event.key === "Escape") { event.preventDefault(); close(); }
    });
    root.addEventListener("focusout", function (event) {
      if (event.relatedTarget && !root.contains(event.relatedTarget)) { open(false); }
    });
    document.addEventListener("keydown", function (event) {
      if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || types(document.activeElement)) { return; }
      event.preventDefault();
      box.focus();
      box.select();
    });
  }

  Swardbook.component("search", start);
})();
