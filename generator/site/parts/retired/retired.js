/* A page that is gone hands the particulars of the link that led here (#v=1&on=...) on to the page that took its place. */
(function () {
  "use strict";

  function startRetired(root) {
    var now = root.querySelector("[data-part=now]");
    if (!now) { return; }
    var address = now.getAttribute("href");
    function handOn() { now.href = address + (/^#v=/.test(window.location.hash) ? window.location.hash : ""); }
    window.addEventListener("hashchange", handOn);
    handOn();
  }

  Swardbook.component("retired", startRetired);
})();
