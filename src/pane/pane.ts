import { excelAnswers } from "../host/excel";

const status = document.getElementById("status");

void excelAnswers().then((answers) => {
  if (status !== null && !answers) {
    status.textContent =
      "Excel did not answer, so nothing calculates here: open this pane from the Home tab of Excel, with a network connection.";
  }
});
