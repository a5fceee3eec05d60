package groundbass.store;

import org.jdbi.v3.core.transaction.TransactionIsolationLevel;

/** For transactions that read from several tables what belongs together. */
public final class OneMoment {
    /**
     * All tables as they are when the first of them is read, whoever writes meanwhile. At a lower level H2 takes each table
     * as it is when it is first named. Who only reads is never turned away by PostgreSQL for it, as no writer is at this
     * level.
     */
    public static final TransactionIsolationLevel LEVEL = TransactionIsolationLevel.SERIALIZABLE;

    private OneMoment() {}
}
