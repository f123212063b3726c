// Another frame of the page: what it posts must not be believed.
"use strict";
window.tell = (target, message) => target.postMessage(message, "*");
