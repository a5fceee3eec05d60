-- When a practice track was made that somebody asked for: where there are too many of them, the oldest go. Empty in files
-- that a release keeps for good.
alter table release_file add column made_at timestamp with time zone;
update release_file set made_at = current_timestamp where role = 'on_request';
create index release_file_role on release_file (role, release_id);
