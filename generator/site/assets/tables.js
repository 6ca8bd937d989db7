/* The theme wraps each table of a written page in a box that scrolls sideways. Who uses a keyboard must be
   able to reach that box, and each needs a name of its own. The theme wraps late, so we watch for it. */
(function () {
  var count = 0;

  function name(wrap) {
    if (wrap.hasAttribute('tabindex')) return;
    count += 1;
    var heading = wrap.previousElementSibling;
    while (heading && !/^H[1-6]$/.test(heading.tagName)) heading = heading.previousElementSibling;
    wrap.setAttribute('tabindex', '0');
    wrap.setAttribute('role', 'region');
    wrap.setAttribute('aria-label', 'Table ' + count + (heading ? ': ' + heading.textContent.trim() : ''));
  }

  function nameAll() {
    Swardbook.each(document, '.md-typeset__scrollwrap', function (wrap) {
      if (!wrap.closest('.sb-table')) name(wrap);
    });
  }

  nameAll();
  var content = document.querySelector('.md-content');
  if (content && window.MutationObserver) new MutationObserver(nameAll).observe(content, { childList: true, subtree: true });
})();
