import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk of its own, kept in a file and mounted on a folder. */
export interface ImageDisk {
  readonly folder: string;
  /** What a power cut at this moment would leave: a copy of the image as far as it was written. */
  cut(): ImageDisk;
  remove(): void;
}

/** Makes and mounts a disk of 64 MB; null where this process may not (Linux as root with loop devices may). */
export function mountImageDisk(): ImageDisk | null {
  const place = mkdtempSync(join(tmpdir(), "dwell-image-"));
  const image = join(place, "disk.img");
  const made = run("truncate", "-s", "64M", image) && run("mkfs.ext4", "-q", "-F", image);
  const disk = made ? mounted(image, place) : null;
  if (!disk) rmSync(place, { recursive: true });
  return disk;
}

function mounted(image: string, place: string): ImageDisk | null {
  const folder = mkdtempSync(join(tmpdir(), "dwell-mounted-"));
  const remove = () => {
    run("umount", "-l", folder);
    rmSync(folder, { recursive: true, force: true });
    rmSync(place, { recursive: true, force: true });
  };
  if (!run("mount", "-o", "loop", image, folder)) {
    rmSync(folder, { recursive: true });
    return null;
  }
  return {
    folder,
    remove,
    cut: () => {
      const copyPlace = mkdtempSync(join(tmpdir(), "dwell-image-"));
      const copy = join(copyPlace, "disk.img");
      const disk = run("cp", image, copy) ? mounted(copy, copyPlace) : null;
      if (!disk) throw new Error("the copy of the disk could not be mounted");
      return disk;
    },
  };
}

function run(command: string, ...args: string[]): boolean {
  return spawnSync(command, args).status === 0;
}

/** Whether such disks can be had here. */
export const hasLoopDevices = (() => {
  const disk = mountImageDisk();
  disk?.remove();
  return disk !== null;
})();
