package groundbass.script.thread;

import groundbass.script.thread.stage.Finding;
import groundbass.script.thread.stage.Said;
import java.util.Optional;

/** Reads clauses of one kind; empty where a clause is of another kind or says more than is understood. */
interface Reader {
    Optional<Finding> read(Said said);
}
