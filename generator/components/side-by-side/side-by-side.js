/* Shows the columns of the grasses that were picked, and keeps them in the address: '#grass=couch.kikuyu'. */
(function () {
  "use strict";
  var IN_ADDRESS = /^#grass=([a-z0-9-]{1,60}(?:\.[a-z0-9-]{1,60}){0,3})$/;

  function startSideBySide(root) {
    var form = root.querySelector("[data-part=picker]");
    var selects = Array.prototype.slice.call(form.querySelectorAll("select"));
    var cells = Array.prototype.slice.call(root.querySelectorAll("[data-column]"));

    function picked() {
      return selects.map(function (select) { return select.value; }).filter(function (id, at, all) { return id && all.indexOf(id) === at; });
    }

    function pick(ids) {
      selects.forEach(function (select, at) {
        var there = Array.prototype.some.call(select.options, function (option) { return option.value === ids[at]; });
        select.value = there ? ids[at] : "";
      });
    }

    function show() {
      var ids = picked();
      cells.forEach(function (cell) { cell.hidden = ids.length > 0 && ids.indexOf(cell.dataset.column) < 0; });
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

  /* This script stands in the page and is read before the one that every page has. */
  window.addEventListener("load", function () { Swardbook.component("side-by-side", startSideBySide); });
})();
