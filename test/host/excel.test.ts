import { contractOf } from "./contract";
import { openInExcel } from "./openInExcel";

contractOf("Excel", (bytes) => Promise.resolve(openInExcel(bytes)));
