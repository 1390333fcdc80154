import "./page.css";
import { startPage } from "./startPage";

void startPage();
