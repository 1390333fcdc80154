/** A file that is dropped on the page is taken; the page shows where while it is dragged. */
export function takeDroppedFiles(take: (file: File) => void): void {
  const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") === true;
  addEventListener("dragover", (event) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    document.body.classList.add("dropping");
  });
  addEventListener("dragleave", () => document.body.classList.remove("dropping"));
  addEventListener("drop", (event) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    document.body.classList.remove("dropping");
    const file = event.dataTransfer?.files[0];
    if (file) take(file);
  });
}
