/* Copies a text for a message. Where the browser gives no clipboard, the text is marked, ready to be copied by hand. */
(function () {
  "use strict";

  function startPaste(root) {
    var text = root.querySelector("textarea");
    var button = root.querySelector("[data-part=copy]");
    var done = root.querySelector("[data-part=done]");

    function mark() {
      text.focus();
      text.select();
      done.textContent = "The text is selected. Now copy it.";
    }

    button.addEventListener("click", function () {
      Swardbook.copy(text.value, function () { done.textContent = "Copied."; }, mark);
    });
    button.hidden = false;
  }

  Swardbook.component("paste", startPaste);
})();
