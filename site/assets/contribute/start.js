/* Puts the form where the page leaves a place for it. */
WetmountContribute.start(self);
