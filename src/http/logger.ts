import { type Logger, pino } from "pino";

/** Where log lines go; standard output when left out. */
export interface LogOptions {
  readonly level: "fatal" | "error" | "warn" | "info" | "debug" | "silent";
  readonly stream?: { write(line: string): void };
}

/**
 * A logger whose lines can carry no patient: of a request only its number, of a reply its status, of an error its kind,
 * code and place in the program. Messages of errors are left out, because a database repeats values in them.
 */
export function safeLogger({ level, stream }: LogOptions): Logger {
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      serializers: {
        req: (request: { id?: unknown }) => ({ id: request.id }),
        res: (reply: { statusCode?: unknown }) => ({ status: reply.statusCode }),
        err: safeError,
      },
      hooks: {
        logMethod(args, method) {
          // An error alone would be logged with its message.
          const safe = args[0] instanceof Error ? [{ err: args[0] }, "error"] : args;
          method.apply(this, safe as typeof args);
        },
      },
    },
    ...(stream ? [stream] : []),
  );
}

interface SafeError {
  readonly kind: string;
  readonly code?: string;
  readonly at: string[];
  readonly cause?: SafeError;
}

function safeError(error: unknown): SafeError {
  if (!(error instanceof Error)) return { kind: typeof error, at: [] };
  const { code } = error as { code?: unknown };
  // The frames only: the lines before them repeat the message.
  const frames = (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line));
  return {
    kind: error.name,
    ...(typeof code === "string" && /^\w+$/.test(code) ? { code } : {}),
    at: frames.map((line) => line.trim()),
    ...(error.cause === undefined ? {} : { cause: safeError(error.cause) }),
  };
}
