/* A file made on this page, handed to the reader; nothing is sent anywhere. kind: its media type. */
Swardbook.download = function (name, kind, text) {
  'use strict';
  var link = Swardbook.element('a');
  link.href = URL.createObjectURL(new Blob([text], { type: kind }));
  link.download = name;
  document.body.appendChild(link);
  link.click();
  link.remove();
  setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
};
