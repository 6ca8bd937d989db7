/* Where a page lists places or grasses, the one this reader chose on the first page is marked. */
(function () {
  function mark(kind) {
    var chosen = Swardbook.preferences.get(kind);
    Swardbook.each(document, '[data-' + kind + ']', function (row) {
      if (row.getAttribute('data-' + kind) === chosen) row.setAttribute('data-chosen', '');
      else row.removeAttribute('data-chosen');
    });
  }
  ['place', 'grass'].forEach(function (kind) {
    mark(kind);
    document.addEventListener('swardbook:' + kind, function () { mark(kind); });
  });
})();
