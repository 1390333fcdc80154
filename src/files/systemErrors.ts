import { InputError } from "../measure/errors";

/** The system's own name of an error; empty for errors that are not the system's. */
export function codeOf(error: unknown): string {
  return typeof error === "object" && error !== null && "code" in error && "syscall" in error ? String(error.code) : "";
}

/** What each error of the system means to the user, and what to do. */
const REASONS: Readonly<Record<string, readonly [got: string, cure: string]>> = {
  ENOSPC: ["a full disk", "make room, or choose another disk"],
  EDQUOT: ["a full quota", "make room, or choose another disk"],
  EFBIG: ["a file larger than is allowed here", "choose another disk"],
  EACCES: ["a folder or file that may not be written", "choose a folder of your own"],
  EPERM: ["a folder or file that may not be written", "choose a folder of your own"],
  EROFS: ["a disk that may only be read", "choose another disk"],
  EBUSY: ["a file that another program holds open", "close it there first"],
  ETXTBSY: ["a file that another program holds open", "close it there first"],
  ENOENT: ["a folder that is not there", "make the folder, or choose another"],
  ENOTDIR: ["a folder that is not there", "make the folder, or choose another"],
  EISDIR: ["a folder", "give the name of a file"],
  EEXIST: ["a file that came to stand there meanwhile", "run again, or choose another name"],
  ENAMETOOLONG: ["a name that is too long for this disk", "choose a shorter name with --out"],
  ELOOP: ["links that lead round in a ring", "give the file itself"],
  EXDEV: ["a file that lies on a disk of its own", "choose another folder"],
  EIO: ["a disk or network that fails", "check the disk, then run again"],
  ESTALE: ["a network folder that has gone away", "connect it again, then run again"],
  ETIMEDOUT: ["a network folder that does not answer", "connect it again, then run again"],
  EHOSTDOWN: ["a network folder that does not answer", "connect it again, then run again"],
  ENOTCONN: ["a network folder that does not answer", "connect it again, then run again"],
  EMFILE: ["a system with too many open files", "close other programs, then run again"],
  ENFILE: ["a system with too many open files", "close other programs, then run again"],
};

/** An error of the system in the user's words; any other error as it is. */
export function explained(error: unknown, argument: string, path: string): unknown {
  const code = codeOf(error);
  if (code === "") return error;
  const [got, cure] = REASONS[code] ?? [`the error ${code} of the system`, "try another folder"];
  return new InputError(argument, `"${path}": ${got}`, "the original is as it was", cure);
}
