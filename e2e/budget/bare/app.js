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
  const tell = ({ state }) => {
    if (state === "ready") document.querySelector(".head").textContent = "ready offline";
  };
  await watchOffline({ tell, isBusy: () => false });
}
