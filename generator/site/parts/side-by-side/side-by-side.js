/* Shows the columns of the grasses that were picked, and keeps them in the address: '#grass=couch.kikuyu'. */
(function () {
  "use strict";
  var IN_ADDRESS = /^#grass=([a-z0-9-]{1,60}(?:\.[a-z0-9-]{1,60}){0,3})$/;

  function startSideBySide(root) {
    var form = root.querySelector("[data-part=picker]");
    var selects = Swardbook.list(form.querySelectorAll("select"));
    var columns = root.querySelectorAll("thead [data-column]").length;
    var groups = Swardbook.list(root.querySelectorAll("th[scope=rowgroup]"));
    var cells = Swardbook.list(root.querySelectorAll("[data-column]"));
    var sources = Swardbook.list(root.querySelectorAll("[data-source]"));

    function picked() {
      return selects.map(function (select) { return select.value; }).filter(function (id, at, all) { return id && all.indexOf(id) === at; });
    }

    function pick(ids) {
      selects.forEach(function (select, at) {
        if (!Swardbook.choose(select, ids[at])) { select.value = ""; }
      });
    }

    /* Picked columns in the order they were picked, in front of the others. */
    function order(ids) {
      Swardbook.each(root, "tr", function (row) {
        var before = row.querySelector("[data-column]");
        ids.forEach(function (id) {
          var cell = row.querySelector("[data-column='" + id + "']");
          if (!cell) { return; }
          if (cell === before) { before = cell.nextElementSibling; }
          row.insertBefore(cell, before);
        });
      });
    }

    /* Only the sources of what is shown. */
    function list() {
      var used = {};
      cells.forEach(function (cell) {
        var signs = cell.hidden ? null : cell.querySelector("sup");
        (signs ? signs.textContent.match(/[0-9]+/g) || [] : []).forEach(function (number) { used[number] = true; });
      });
      sources.forEach(function (item) { item.hidden = !used[item.dataset.source]; });
    }

    function show() {
      var ids = picked();
      order(ids);
      cells.forEach(function (cell) { cell.hidden = ids.length > 0 && ids.indexOf(cell.dataset.column) < 0; });
      root.dataset.picked = ids.length;
      list();
      groups.forEach(function (heading) { heading.colSpan = (ids.length || columns) + 1; });
      return ids;
    }

    function start() {
      var found = IN_ADDRESS.exec(window.location.hash);
      pick((found ? found[1] : root.dataset.first).split("."));
      show();
    }

    form.addEventListener("change", function () {
      var ids = show();
      root.querySelector("[data-part=said]").textContent = ids.length ? ids.length + " grasses shown." : "All grasses shown.";
      try { window.history.replaceState(null, "", ids.length ? "#grass=" + ids.join(".") : window.location.pathname); } catch (refused) { /* A folder on a disk may refuse; the table is right all the same. */ }
    });
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    window.addEventListener("hashchange", start);
    form.hidden = false;
    start();
  }

  Swardbook.component("side-by-side", startSideBySide);
})();
