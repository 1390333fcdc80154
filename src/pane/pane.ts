import { excelAnswers, excelPort } from "../host/excel";
import { excelPlace } from "../host/excelPlace";
import { excelShowing } from "../host/excelShowing";
import { mountPane } from "./mountPane";

const pane = document.getElementById("pane")!;

void excelAnswers().then((answers) => {
  if (!answers)
    return say(
      "Excel did not answer, so nothing calculates here: open this pane from the Home tab of Excel, with a network connection.",
    );
  const { lacking, saving, colours } = excelPlace();
  if (colours !== undefined) pane.style.colorScheme = colours;
  if (lacking !== undefined) return say(lacking);
  // Excel loads this page to calculate, too: nothing is read until somebody looks at it.
  const showing = excelShowing();
  const mount = () =>
    void mountPane(pane, excelPort(showing), { planWorker: "planWorker.js", fonts: "fonts/", saving });
  if (showing.now()) return mount();
  const stop = showing.onShow(() => {
    stop();
    mount();
  });
});

function say(text: string): void {
  pane.classList.add("enclosure-pane", "unanswered");
  pane.textContent = text;
}
