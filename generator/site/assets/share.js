/* Hands something to the device's own sheet for sharing, where it has one; elsewhere the button stays hidden. Nothing is sent by the page:
   whoever taps it chooses to whom, or closes the sheet again.
   gives: what is shared at that moment, {title, text, url}, or null for nothing yet. */
Swardbook.share = function (button, gives) {
  'use strict';
  if (!button || !navigator.share) return;
  button.hidden = false;
  button.addEventListener('click', function () {
    var what = gives();
    if (what) navigator.share(what).catch(function () { /* The sheet was closed again: nothing to say. */ });
  });
};
