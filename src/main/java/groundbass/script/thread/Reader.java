package groundbass.script.thread;

import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import java.util.Optional;

/** Reads clauses of one kind; empty where a clause is of another kind or says more than is understood. */
interface Reader {
    Optional<Judged> read(PlacedClause said);
}
