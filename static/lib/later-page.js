// What the first screen does without: rows, fields and dialogs, in a page of their own, the styles that they wear, and
// what a home screen asks for.

import { element, part } from "./dom.js";

const PAGE = "../later.html";
const STYLES = "../later.css";
const MANIFEST = "manifest.webmanifest";

/** Take the later page's templates and dialogs into this one, once their styles are here. */
export async function takeInLaterPage() {
  const [{ body }] = await Promise.all([read(addressOf(PAGE)), wear(addressOf(STYLES))]);
  document.body.append(...body.children);
  document.head.append(element("link", { rel: "manifest", href: MANIFEST }));
}

function addressOf(name) {
  return new URL(name, import.meta.url).href;
}

/** Read a page of our own; a request parses it by itself, so no text is ever taken for markup here. */
function read(address) {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.responseType = "document";
    request.onload = () => {
      // A page that broke off, or another in its place, lacks the mark at its end.
      if (request.status === 200 && request.response && part("later-end", request.response)) resolve(request.response);
      else reject(new Error(`${address} answered ${request.status}`));
    };
    request.onerror = () => reject(new Error(`${address} did not answer`));
    request.open("GET", address);
    request.send();
  });
}

function wear(address) {
  return new Promise((resolve, reject) => {
    const link = element("link", { rel: "stylesheet", href: address });
    link.onload = resolve;
    link.onerror = () => {
      link.remove();
      reject(new Error(`${address} did not answer`));
    };
    document.head.append(link);
  });
}
