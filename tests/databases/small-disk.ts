import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk of its own with little room, mounted on a folder. */
export interface SmallDisk {
  readonly folder: string;
  remove(): void;
}

/** Mounts a small disk; null where this process may not mount (Linux as root may). */
export function mountSmallDisk(sizeKb: number): SmallDisk | null {
  const folder = mkdtempSync(join(tmpdir(), "dwell-disk-"));
  const { status } = spawnSync("mount", ["-t", "tmpfs", "-o", `size=${sizeKb}k`, "tmpfs", folder]);
  if (status !== 0) {
    rmSync(folder, { recursive: true });
    return null;
  }
  return {
    folder,
    remove: () => {
      spawnSync("umount", ["-l", folder]);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Whether a small disk can be had; else the tests limit the pages of a file, which fails with the same code. */
export const canMount = (() => {
  const disk = mountSmallDisk(64);
  disk?.remove();
  return disk !== null;
})();

/** How the tests of a full disk fill one, for their titles. */
export const howFull = canMount ? "on a disk without room" : "at a page limit, since no disk can be mounted here";
