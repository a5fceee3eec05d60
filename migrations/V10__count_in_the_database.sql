-- Figures of many downloads are summed where they lie, and lists are read piece by piece in the order of their ids, which
-- is the order of time. What an educator takes at the desk is recorded and counted nowhere.
alter table download add column own boolean default false not null;

drop index download_of_episode;
create index download_of_episode on download (episode_id, id);
