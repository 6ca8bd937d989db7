/* Opens the tab that an address names, and with the theme's setting for it the tabs that were opened before on another page.
   Only pages with tabs load this. */
(function () {
  "use strict";
  var linked = document.currentScript.hasAttribute("data-linked");
  var opened = linked ? window.__md_get("__tabs") : null;
  var named = document.getElementById(window.location.hash.slice(1));

  if (Array.isArray(opened)) {
    document.querySelectorAll(".tabbed-set").forEach(function (set) {
      var labels = Array.prototype.slice.call(set.querySelectorAll(".tabbed-labels label"));
      var wanted = opened.find(function (name) { return labels.some(function (label) { return label.innerText.trim() === name; }); });
      var label = labels.find(function (each) { return each.innerText.trim() === wanted; });
      if (label) { document.getElementById(label.htmlFor).checked = true; }
    });
  }
  if (named && named.name) { named.checked = named.name.startsWith("__tabbed_"); }
})();
