/* From a folder no browser takes a manifest, and one says so on each page. */
(function () {
  "use strict";
  var manifest = document.querySelector("link[rel=manifest]");
  if (manifest && window.location.protocol === "file:") { manifest.remove(); }
})();

/* Where the book is hosted, pages stay readable without a network once they were opened: offline-worker.js keeps them. A page opened
   from a folder needs no keeping, and no worker would start there. */
(function () {
  "use strict";
  if (!/^https?:$/.test(window.location.protocol) || !("serviceWorker" in navigator)) { return; }
  var script = document.currentScript.src;

  /* The first page that is opened was fetched before the worker began: it is told what the page is made of. */
  function keep(registration) {
    var parts = Array.prototype.map.call(document.querySelectorAll("script[src], img[src], link[rel=stylesheet]"), function (each) {
      return each.src || each.href;
    });
    registration.active.postMessage([window.location.href.split("#")[0]].concat(parts));
  }

  window.addEventListener("load", function () {
    navigator.serviceWorker.register(new URL("../offline-worker.js", script).href).then(function () {
      return navigator.serviceWorker.ready;
    }).then(keep, function () { /* A browser that keeps nothing still shows the book. */ });
  });
})();
