package groundbass.bench;

import groundbass.OutsideTools;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Drives an address of this machine with 32 connections: with {@code wrk} where it is installed, else with our own. */
final class Load {
    static final int CONNECTIONS = 32;

    private static final int MOST_TO_WARM = 10;

    // as a browser asks; each request comes from a reader of its own, or the downloads of all would be taken for one
    // reader's
    private static final String SCRIPT = """
            local n = 0
            request = function()
              n = n + 1
              local address = "10." .. n % 250 .. "." .. math.floor(n / 250) % 250 .. "." .. math.floor(n / 62500) % 250
              return wrk.format("GET", nil, {["X-Forwarded-For"] = address, ["Accept-Encoding"] = "gzip"})
            end
            """;

    /** Requests answered with 200, how many in a second, and after how long half and 99 of 100 were answered. */
    record Result(long answered, double rate, double p50, double p99, long failed) {
        @Override
        public String toString() {
            return "%,9.0f/s   p50 %6.2f ms   p99 %7.2f ms   failed %d".formatted(rate, p50, p99, failed);
        }
    }

    private Load() {}

    static Result run(URI address, int seconds) throws Exception {
        return OutsideTools.here().find("wrk").isPresent() ? wrk(address, seconds) : Sockets.run(address, seconds);
    }

    /** Something to drive, and the process behind it. */
    record Side(String name, URI address, Child process) {}

    /** What one side did in all rounds; {@code cpu} in microseconds. */
    private record Sum(Result median, long cpu, long answered) {
        /** Of each request. */
        double micros() {
            return (double) cpu / answered;
        }
    }

    /**
     * All sides in turns; prints medians, and beside the ratio of the rates to each anchor that of the processor time
     * for each request, which other programs on the machine disturb less.
     */
    static void compare(Side ours, List<Side> anchors, int rounds, int seconds) throws Exception {
        var sides = Stream.concat(Stream.of(ours), anchors.stream()).toList();
        for (Side side : sides) warm(side, seconds);
        var results = sides.stream().map(side -> new ArrayList<Result>()).toList();
        var cpu = new long[sides.size()];
        for (int round = 0; round < rounds; round++) {
            for (int i = 0; i < cpu.length; i++) {
                long before = sides.get(i).process().cpuMicros();
                results.get(i).add(run(sides.get(i).address(), seconds));
                cpu[i] += sides.get(i).process().cpuMicros() - before;
            }
        }
        Sum mine = sum(results.get(0), cpu[0]);
        print(ours, mine);
        for (int i = 1; i < cpu.length; i++) print(sides.get(i), sum(results.get(i), cpu[i]), mine);
    }

    private static Sum sum(List<Result> results, long cpu) {
        return new Sum(
                median(results),
                cpu,
                results.stream().mapToLong(Result::answered).sum());
    }

    private static void print(Side side, Sum sum) {
        Timing.print("%-20s %s   %6.0f us of processor", side.name(), sum.median(), sum.micros());
    }

    private static void print(Side anchor, Sum theirs, Sum mine) {
        print(anchor, theirs);
        Timing.print(
                "ratio of rates %.2f, of processor time %.2f",
                mine.median().rate() / theirs.median().rate(), theirs.micros() / mine.micros());
    }

    /** Until the code is compiled: while a round is a tenth faster than the one before, at most ten of them. */
    private static void warm(Side side, int seconds) throws Exception {
        double before = 0;
        for (int round = 0; round < MOST_TO_WARM; round++) {
            double rate = run(side.address(), seconds).rate();
            if (round >= 2 && rate < 1.1 * before) return;
            before = Math.max(rate, before);
        }
    }

    private static Result median(List<Result> results) {
        var sorted = results.stream()
                .sorted((one, other) -> Double.compare(one.rate(), other.rate()))
                .toList();
        return sorted.get(sorted.size() / 2);
    }

    private static Result wrk(URI address, int seconds) throws IOException {
        var script = Files.createTempFile("bench", ".lua");
        try {
            Files.writeString(script, SCRIPT);
            var lines = Child.lines(List.of(
                    OutsideTools.here().find("wrk").orElseThrow().toString(),
                    "-t1",
                    "-c" + CONNECTIONS,
                    "-d" + seconds + "s",
                    "--latency",
                    "-s",
                    script.toString(),
                    address.toString()));
            return read(String.join("\n", lines));
        } finally {
            Files.delete(script);
        }
    }

    private static Result read(String told) {
        return new Result(
                Long.parseLong(find(told, "(\\d+) requests in")),
                Double.parseDouble(find(told, "Requests/sec:\\s+([\\d.]+)")),
                millis(find(told, "(?m)^\\s+50%\\s+(\\S+)\\s*$")),
                millis(find(told, "(?m)^\\s+99%\\s+(\\S+)\\s*$")),
                told.contains("Non-2xx") ? Long.parseLong(find(told, "Non-2xx or 3xx responses: (\\d+)")) : 0);
    }

    private static double millis(String text) {
        if (text.endsWith("us")) return Double.parseDouble(text.replace("us", "")) / 1000;
        if (text.endsWith("ms")) return Double.parseDouble(text.replace("ms", ""));
        return Double.parseDouble(text.replace("s", "")) * 1000;
    }

    private static String find(String text, String pattern) {
        var found = Pattern.compile(pattern).matcher(text);
        if (!found.find()) throw new IllegalStateException("no " + pattern + " in:\n" + text);
        return found.group(1);
    }
}
