// What the first screen does without: rows, fields and dialogs, in a page of their own.

const PAGE = "../later.html";

/** Take the later page's templates and dialogs into this one. */
export async function takeInLaterPage() {
  const { body } = await read(new URL(PAGE, import.meta.url));
  document.body.append(...body.children);
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
