package groundbass.kill;

import java.util.stream.IntStream;

/** Threads that keep the processors busy until closed, so that a writer is put aside between any two of its steps. */
final class Burners implements AutoCloseable {
    private final int threads;
    private volatile boolean burning = true;

    Burners(int threads) {
        this.threads = threads;
    }

    void start() {
        IntStream.range(0, threads).forEach(i -> {
            var thread = new Thread(this::burn, "burner " + i);
            thread.setDaemon(true);
            thread.start();
        });
    }

    private void burn() {
        while (burning) {
            Thread.onSpinWait();
        }
    }

    @Override
    public void close() {
        burning = false;
    }
}
