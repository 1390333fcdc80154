import { excelAnswers, excelPort } from "../host/excel";
import { mountPane } from "./mountPane";

const pane = document.getElementById("pane")!;

void excelAnswers().then((answers) => {
  if (answers) return mountPane(pane, excelPort(), { planWorker: "planWorker.js", fonts: "fonts/" });
  pane.classList.add("enclosure-pane", "unanswered");
  pane.textContent =
    "Excel did not answer, so nothing calculates here: open this pane from the Home tab of Excel, with a network connection.";
});
