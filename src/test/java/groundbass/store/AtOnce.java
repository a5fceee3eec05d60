package groundbass.store;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;

/** Two who do the same at once, as two windows do. */
public final class AtOnce {
    private AtOnce() {}

    /** Runs {@code task} in two threads; what fails in either of them fails here. */
    public static void twice(Runnable task) throws Exception {
        var windows = Executors.newFixedThreadPool(2);
        try {
            Callable<Void> window = () -> {
                task.run();
                return null;
            };
            for (var done : windows.invokeAll(List.of(window, window))) {
                done.get();
            }
        } finally {
            windows.shutdownNow();
        }
    }
}
