// What the first screen does without: rows, fields and dialogs, in a page of their own, and the styles that they wear.

const PAGE = "../later.html";
const STYLES = "../later.css";

/** Take the later page's templates and dialogs into this one, once their styles are here. */
export async function takeInLaterPage() {
  const [{ body }] = await Promise.all([read(addressOf(PAGE)), wear(addressOf(STYLES))]);
  document.body.append(...body.children);
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
      if (request.status === 200 && request.response) resolve(request.response);
      else reject(new Error(`${address} answered ${request.status}`));
    };
    request.onerror = () => reject(new Error(`${address} did not answer`));
    request.open("GET", address);
    request.send();
  });
}

function wear(address) {
  return new Promise((resolve, reject) => {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = address;
    link.onload = resolve;
    link.onerror = () => {
      link.remove();
      reject(new Error(`${address} did not answer`));
    };
    document.head.append(link);
  });
}
