[(block) (part)] @fold
