package groundbass.publishing.jobs;

import com.github.kagkarlsson.scheduler.serializer.Serializer;

/**
 * What a job's row says beside its name and hour: nothing. What stands there all the same, out of a backup of a stranger's
 * say, is not read; the library's own way would make objects of it.
 */
final class NoData implements Serializer {
    @Override
    public byte[] serialize(Object data) {
        if (data != null) {
            throw new IllegalArgumentException("no job has data: " + data.getClass());
        }
        return null;
    }

    @Override
    public <T> T deserialize(Class<T> kind, byte[] data) {
        return null;
    }
}
