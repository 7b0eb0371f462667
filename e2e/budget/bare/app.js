const field = document.querySelector("input");
const answer = document.querySelector("output");
field.addEventListener("input", () => {
  answer.textContent = field.value;
});
document.querySelector("[data-part=sheet]").hidden = false;
keepForOffline();

async function keepForOffline() {
  await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
  const { watchOffline } = await import("./keeping/offline.js");
  const tell = ({ state, says }) => {
    document.querySelector(".head").textContent = state === "ready" ? "ready offline" : says;
  };
  await watchOffline({ tell, isBusy: () => false });
}
