/* What the theme's own script asks of the page before it starts: whereabouts the book stands, and a memory for light or dark.
   A browser may refuse to keep anything, or hold what another page wrote: then a choice lasts one page, and nothing breaks. */
(function () {
  "use strict";
  var scope = new URL(document.currentScript.getAttribute("data-scope"), window.location.href);
  var here = {};

  function name(key, place) { return (place || scope).pathname + "." + key; }

  function sound(key, value) {
    return key !== "__palette" || (value !== null && typeof value === "object" && Number.isInteger(value.index)) ? value : null;
  }

  function get(key, storage, place) {
    try {
      var text = (storage || window.localStorage).getItem(name(key, place));
      if (text !== null) { return sound(key, JSON.parse(text)); }
    } catch (error) {
      /* Refused, or not ours: what was chosen on this page still counts. */
    }
    return Object.prototype.hasOwnProperty.call(here, name(key, place)) ? here[name(key, place)] : null;
  }

  function set(key, value, storage, place) {
    here[name(key, place)] = value;
    try {
      (storage || window.localStorage).setItem(name(key, place), JSON.stringify(value));
    } catch (error) {
      /* As above. */
    }
  }

  /* A number for a text, by which the theme knows a notice that was closed. */
  function hash(text) {
    return Array.from(text).reduce(function (sum, letter) { return (sum << 5) - sum + letter.charCodeAt(0); }, 0);
  }

  /* What only scripts can fill has its room from the first drawing, and none without them. */
  document.documentElement.classList.add("sb-live");

  window.__md_scope = scope;
  window.__md_get = get;
  window.__md_set = set;
  window.__md_hash = hash;
})();
